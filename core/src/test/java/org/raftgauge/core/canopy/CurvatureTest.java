// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** How planes bend. */
class CurvatureTest {
  private static final int WIDTH = 12;

  /** A plane of {@code a x^2 + b x y + c y^2}. */
  private static float[] plane(double a, double b, double c) {
    float[] plane = new float[WIDTH * WIDTH];
    for (int i = 0; i < plane.length; i++) {
      int x = i % WIDTH;
      int y = Math.floorDiv(i, WIDTH);
      plane[i] = (float) (a * x * x + b * x * y + c * y * y);
    }
    return plane;
  }

  @Test
  void secondDifferencesOfASurfaceOfSecondOrderAreItsOwn() {
    int middle = 6 * WIDTH + 6;
    // Second differences over a step s are 2 a s^2, 2 c s^2 and b s^2.
    Curvature straight = new Curvature(plane(-1, 0, 0.5), WIDTH, 1);
    assertEquals(-2, straight.least()[middle], 1e-4);
    assertEquals(1, straight.most()[middle], 1e-4);
    // [[0, 1], [1, 0]] has the eigenvalues -1 and 1; four times that over two pixels.
    Curvature slanted = new Curvature(plane(0, 1, 0), WIDTH, 2);
    assertEquals(-4, slanted.least()[middle], 1e-4);
    assertEquals(4, slanted.most()[middle], 1e-4);
  }

  @Test
  void aThinLineIsARidgeWhicheverWayItRuns() {
    float[] line = new float[WIDTH * WIDTH];
    float[] slant = new float[WIDTH * WIDTH];
    for (int k = 0; k < WIDTH; k++) {
      line[k * WIDTH + 6] = 1;
      slant[k * WIDTH + k] = 1;
    }
    // Across the line 0 - 2 + 0; along it nothing.
    assertEquals(-2, new Curvature(line, WIDTH, 1).least()[5 * WIDTH + 6], 1e-6);
    assertEquals(0, new Curvature(line, WIDTH, 1).most()[5 * WIDTH + 6], 1e-6);
    // Both differences -2, mixed (1 + 1) / 4: -2 - 0.5 and -2 + 0.5.
    assertEquals(-2.5, new Curvature(slant, WIDTH, 1).least()[5 * WIDTH + 5], 1e-6);
    assertEquals(-1.5, new Curvature(slant, WIDTH, 1).most()[5 * WIDTH + 5], 1e-6);
  }
}
