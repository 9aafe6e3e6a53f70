// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/** What must hold of every camera over every board: poses, lenses and places drawn with a seed. */
class GeometryPropertyTest {
  private static final int CASES = 2000;

  private final Random random = new Random(8_301);

  @Test
  void aPlaceOnTheDeckComesBackFromThePhoto() {
    for (int n = 0; n < CASES; n++) {
      Board board = board();
      CameraPose pose = pose(board);
      PointMm there = on(board);
      PointMm back = pose.toDeck(pose.toPhoto(there));
      assertEquals(there.xMm(), back.xMm(), 1e-4, "case " + n);
      assertEquals(there.yMm(), back.yMm(), 1e-4, "case " + n);
    }
  }

  @Test
  void aPlaceAboveTheDeckComesBackAtItsHeight() {
    for (int n = 0; n < CASES; n++) {
      Board board = board();
      CameraPose pose = pose(board);
      PointMm there = on(board);
      double height = between(-20, 300);
      PointMm back = pose.toHeight(pose.toPhoto(there.xMm(), there.yMm(), height), height);
      assertEquals(there.xMm(), back.xMm(), 1e-4, "case " + n);
      assertEquals(there.yMm(), back.yMm(), 1e-4, "case " + n);
    }
  }

  /** A plane's similar triangles: at height z under a camera at H lengths grow by H / (H - z). */
  @Test
  void whatIsHigherLooksLargerByTheRatioOfTheDistances() {
    for (int n = 0; n < CASES; n++) {
      CameraPose pose = pose(board());
      double height = between(0, 400);
      double distances = pose.heightMm() / (pose.heightMm() - height);
      assertEquals(distances, pose.magnification(height), 1e-9, "case " + n);
      assertTrue(pose.magnification(height + 1) > pose.magnification(height), "case " + n);
    }
  }

  /** A millimetre of the deck, laid both ways, against the scale that the pose tells there. */
  @Test
  void theScaleOfAPlaceIsThatOfItsSurroundings() {
    for (int n = 0; n < CASES; n++) {
      Board board = board();
      CameraPose pose = pose(board);
      PointMm p = on(board);
      PointPx at = pose.toPhoto(p);
      PointPx right = pose.toPhoto(new PointMm(p.xMm() + 1, p.yMm()));
      PointPx down = pose.toPhoto(new PointMm(p.xMm(), p.yMm() + 1));
      double area =
          Math.abs(
              (right.xPx() - at.xPx()) * (down.yPx() - at.yPx())
                  - (right.yPx() - at.yPx()) * (down.xPx() - at.xPx()));
      assertEquals(1, area * Math.pow(pose.mmPerPxAt(p), 2), 0.02, "case " + n);
    }
  }

  private Board board() {
    return new Board(between(300, 1200), between(300, 1600));
  }

  private PointMm on(Board board) {
    return new PointMm(between(0, board.widthMm()), between(0, board.lengthMm()));
  }

  /** Turned any way, tilted by up to 8 degrees, far enough off for the board to fit the lens. */
  private CameraPose pose(Board board) {
    double f = between(900, 4000);
    Lens lens =
        new Lens(
            f,
            f * between(0.98, 1.02),
            between(500, 2000),
            between(400, 1500),
            between(-0.12, 0.05),
            between(0, 0.03),
            between(-0.0005, 0.0005),
            between(-0.0005, 0.0005),
            0);
    double far = 1.2 * Math.max(board.widthMm(), board.lengthMm());
    return TestPoses.over(
        lens, board, between(far, 2.5 * far), between(-180, 180), between(-8, 8), between(-8, 8));
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
