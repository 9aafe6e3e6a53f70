// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.opencv.TraceOutline;

/** Outlines of shapes whose lengths and areas are known. */
class ShapeOfTest {
  private static final int SIZE = 200;

  @Test
  void aDiscHasItsPerimeterDiameterAndHull() {
    for (double r : new double[] {15, 30, 60, 90}) {
      ShapeOf disc = shape((x, y) -> r - Math.hypot(x - 0.3, y + 0.2));
      assertEquals(1, disc.perimeterPx() / (2 * Math.PI * r), 0.02, "r " + r);
      assertEquals(2 * r, disc.largestDiameterPx(), 1.2, "r " + r);
      // The hull of pixels lies about half a pixel about the disc here and there.
      assertEquals(1, disc.hullAreaPx() / (Math.PI * r * r), 1.5 / r, "r " + r);
    }
  }

  @Test
  void aSquareAtAnyAngleHasItsPerimeterDiagonalAndArea() {
    double half = 50;
    for (int degrees = 0; degrees < 90; degrees += 15) {
      double c = Math.cos(Math.toRadians(degrees));
      double s = Math.sin(Math.toRadians(degrees));
      ShapeOf square =
          shape((x, y) -> half - Math.max(Math.abs(c * x + s * y), Math.abs(c * y - s * x)));
      // Edges along the pixels are the estimator's worst: 0.980 a step, as it is unbiased over all
      // directions, not in each.
      double share = degrees == 0 ? 0.025 : 0.02;
      assertEquals(1, square.perimeterPx() / (8 * half), share, degrees + " degrees");
      assertEquals(2 * half * Math.sqrt(2), square.largestDiameterPx(), 2.2, degrees + " degrees");
      assertEquals(1, square.hullAreaPx() / (4 * half * half), 0.02, degrees + " degrees");
    }
  }

  @Test
  void anEllipseHasItsPerimeterAndLongAxis() {
    double a = 80;
    double b = 30;
    double sum = 0;
    int n = 100_000;
    for (int i = 0; i < n; i++) {
      double t = 2 * Math.PI * (i + 0.5) / n;
      sum += Math.hypot(a * Math.sin(t), b * Math.cos(t)) * 2 * Math.PI / n;
    }
    for (int degrees = 0; degrees < 180; degrees += 30) {
      double c = Math.cos(Math.toRadians(degrees));
      double s = Math.sin(Math.toRadians(degrees));
      ShapeOf ellipse = shape((x, y) -> 1 - Math.hypot((c * x + s * y) / a, (c * y - s * x) / b));
      assertEquals(1, ellipse.perimeterPx() / sum, 0.02, degrees + " degrees");
      assertEquals(2 * a, ellipse.largestDiameterPx(), 1.5, degrees + " degrees");
    }
  }

  @Test
  void theHullOfACrossIsLargerThanTheCross() {
    ShapeOf cross =
        shape(
            (x, y) ->
                Math.max(
                    Math.min(60 - Math.abs(x), 20 - Math.abs(y)),
                    Math.min(20 - Math.abs(x), 60 - Math.abs(y))));
    // Octagon: a square of 120 px less four corner triangles of 40 x 40 / 2.
    assertEquals(1, cross.hullAreaPx() / (120 * 120 - 4 * 800), 0.02);
    // Twelve sides: 4 ends of 40, 8 flanks of 40, all along the pixels, with twelve corners.
    assertEquals(1, cross.perimeterPx() / 480, 0.035);
    assertTrue(cross.hullAreaPx() > 1.3 * (2 * 120 * 40 - 40 * 40));
  }

  /** Traces where a function is above 0, x and y from the picture's middle. */
  private static ShapeOf shape(DoubleBinaryOperator inside) {
    byte[] mask = new byte[SIZE * SIZE];
    for (int i = 0; i < mask.length; i++) {
      double x = i % SIZE - (SIZE - 1) / 2.0;
      double y = Math.floorDiv(i, SIZE) - (SIZE - 1) / 2.0;
      mask[i] = inside.applyAsDouble(x, y) > 0 ? (byte) 255 : 0;
    }
    return ShapeOf.longest(TraceOutline.outer(SIZE, SIZE, mask));
  }
}
