// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PublishedTable;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DrawnDeck;

class ParallaxTest {

  @Test
  @Tag("published")
  void factorsAreThoseOfTheWorkedTable() {
    for (Map<String, String> row : PublishedTable.rows("pinhole-parallax.csv")) {
      double camera = Double.parseDouble(row.get("camera_height_mm"));
      double height = Double.parseDouble(row.get("height_mm"));
      CameraPose pose = DrawnDeck.above(0, 0, camera);
      double length = pose.magnification(height);
      // Half a unit of the eighth decimal.
      assertEquals(Double.parseDouble(row.get("length_factor")), length, 5.1e-9);
      assertEquals(Double.parseDouble(row.get("area_factor")), length * length, 5.1e-9);
      double factor = Parallax.factor(height, camera);
      assertEquals(Double.parseDouble(row.get("correction")), factor, 5.1e-9);
      assertEquals(1, factor * length * length, 1e-12);
      // Outward by r h / (H - h), as the table's text says; here r = 300 mm along 3-4-5.
      PointMm seen = Parallax.seenAt(new PointMm(180, 240), height, pose);
      double out = 300 * height / (camera - height);
      assertEquals(180 + 0.6 * out, seen.xMm(), 1e-9);
      assertEquals(240 + 0.8 * out, seen.yMm(), 1e-9);
    }
  }

  @Test
  void whatStandsUnderTheCameraIsNotMoved() {
    CameraPose pose = DrawnDeck.above(200, 500, 1600);
    PointMm seen = Parallax.seenAt(new PointMm(200, 500), 120, pose);
    assertEquals(200, seen.xMm(), 1e-9);
    assertEquals(500, seen.yMm(), 1e-9);
  }

  /**
   * For h = c A^0.5: sqrt(A) = sqrt(S) (1 - c sqrt(A) / H), so sqrt(A) = sqrt(S) / (1 + c sqrt(S) /
   * H).
   */
  @Test
  void areaAndHeightSolvedTogetherAreTheClosedFormOfASquareRootModel() {
    for (double seen : new double[] {0.5, 20, 150, 800}) {
      for (double scale : new double[] {1, 5.2, 12}) {
        double root = Math.sqrt(seen) / (1 + scale * Math.sqrt(seen) / 1600);
        double height = Parallax.heightMm(seen, new HeightModel(scale, 0.5, 0.5), 1600);
        assertEquals(scale * root, height, 1e-9, seen + ", " + scale);
        assertEquals(root * root, seen * Parallax.factor(height, 1600), 1e-9);
      }
    }
  }

  /** For h = c A: A = S (1 - c A / H)^2 is a quadratic; its smaller root is the plant. */
  @Test
  void areaAndHeightSolvedTogetherAreTheRootOfALinearModel() {
    double seen = 300;
    double k = 0.4 / 1600;
    double a = seen * k * k;
    double b = -(2 * seen * k + 1);
    double area = (-b - Math.sqrt(b * b - 4 * a * seen)) / (2 * a);
    double height = Parallax.heightMm(seen, new HeightModel(0.4, 1, 0.5), 1600);
    assertEquals(0.4 * area, height, 1e-9);
  }

  @Test
  void aModelWithoutGrowthGivesItsOwnHeight() {
    assertEquals(80, Parallax.heightMm(100, new HeightModel(80, 0, 0.5), 1600), 1e-12);
    assertEquals(0, Parallax.heightMm(100, Grounds.FLAT, 1600), 1e-12);
    assertEquals(0, Parallax.heightMm(0, new HeightModel(80, 0, 0.5), 1600), 1e-12);
  }
}
