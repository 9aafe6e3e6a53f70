// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SurfaceTest {

  @Test
  void aFlatFieldComesBackWithoutBend() {
    double[] c = Surface.fit(points(new double[] {-0.4, 0, 0, 0, 0, 0}, 0), 0.01);
    assertEquals(-0.4, c[0], 1e-6);
    assertEquals(-0.4, Surface.at(c, 0.9, -0.9), 1e-6);
  }

  @Test
  void aSlopeAndABowlComeBackToWithinTheRidge() {
    double[] truth = {0.1, 0.2, -0.1, -0.15, 0.05, 0.1};
    double[] c = Surface.fit(points(truth, 0.01), 0.01);
    for (double u = -1; u <= 1; u += 0.5) {
      for (double v = -1; v <= 1; v += 0.5) {
        // A ridge of 0.02 against second moments of 1/3 and fourth of 1/9 to 1/5 shrinks terms by
        // 6 % to 20 %: at most 0.2 * (0.15 + 0.05 + 0.1) + 0.06 * 0.3.
        assertEquals(Surface.at(truth, u, v), Surface.at(c, u, v), 0.08, u + ", " + v);
      }
    }
  }

  @Test
  void aThirdOfFarPointsDoesNotMoveIt() {
    double[] truth = {0.1, 0.05, 0, 0, 0, 0};
    double[][] points = points(truth, 0.01);
    for (int i = 0; i < points.length; i += 3) {
      points[i][2] -= 1.5;
    }
    double[] c = Surface.fit(points, 0.01);
    assertEquals(0.1, c[0], 0.01);
    assertEquals(0.05, c[1], 0.01);
  }

  @Test
  void quantilesAreOrderStatisticsAndLeaveTheSampleAlone() {
    double[] sample = {5, 1, 4, 2, 3};
    // Nearest rank of share * (n - 1).
    assertEquals(1, Quantile.of(sample, 0));
    assertEquals(3, Quantile.of(sample, 0.5));
    assertEquals(4, Quantile.of(sample, 0.75));
    assertEquals(5, Quantile.of(sample, 1));
    assertEquals("[5.0, 1.0, 4.0, 2.0, 3.0]", Arrays.toString(sample));
  }

  @Test
  void theTableOfARuleGivesTheRuleToWithinAStep() {
    ColourTable table = ColourTable.of(LeafRule::green);
    Random random = new Random(4);
    for (int i = 0; i < 2000; i++) {
      float r = 0.1f + 0.9f * random.nextFloat();
      float g = 0.1f + 0.9f * random.nextFloat();
      float b = 0.1f + 0.9f * random.nextFloat();
      // 64 steps on a square-root scale: half a step at 0.1 is 2 * 0.0088 / 0.28 = 6 % of light;
      // four logs.
      assertEquals(LeafRule.green(r, g, b), table.score(r, g, b), 4 * 0.064);
    }
  }

  @Test
  void lightPastWhiteAndUnderNothingStaysInTheTable() {
    ColourTable table = ColourTable.of((r, g, b) -> r + 10 * g + 100 * b);
    // The top step is 1.25 of white.
    assertEquals(1.25 * 111, table.score(9, 9, 9), 1e-3);
    assertEquals(0, table.score(-1, -1, 0), 1e-6);
  }

  private static double[][] points(double[] truth, double noise) {
    Random random = new Random(5);
    double[][] points = new double[3000][];
    for (int i = 0; i < points.length; i++) {
      double u = 2 * random.nextDouble() - 1;
      double v = 2 * random.nextDouble() - 1;
      points[i] = new double[] {u, v, Surface.at(truth, u, v) + noise * random.nextGaussian()};
    }
    return points;
  }
}
