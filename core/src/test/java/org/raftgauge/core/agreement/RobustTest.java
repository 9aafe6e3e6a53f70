// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RobustTest {

  @Test
  void bisquareFindsTheLineUnderAThirdOfWildPoints() {
    Random random = new Random(11);
    double[][] design = new double[30][];
    double[] y = new double[30];
    for (int i = 0; i < 30; i++) {
      design[i] = new double[] {1, i};
      y[i] = 2 + 0.5 * i + 0.1 * random.nextGaussian() + (i % 3 == 0 ? 8 : 0);
    }
    double[] weights = Robust.bisquareWeights(design, y);
    double[] b = LinearFit.weighted(design, y, weights).coefficients();

    // The line that made the points; 20 good ones of sd 0.1 tell the slope to about 0.0025.
    assertEquals(0.5, b[1], 0.01);
    assertEquals(2, b[0], 0.15);
    assertTrue(IntStream.range(0, 30).filter(i -> i % 3 == 0).allMatch(i -> weights[i] == 0));
  }

  @Test
  void bisquareLeavesCleanPointsNearlyAlone() {
    double[][] design = new double[12][];
    double[] y = new double[12];
    for (int i = 0; i < 12; i++) {
      design[i] = new double[] {1, i};
      y[i] = 1 + 2 * i + (i % 2 == 0 ? 0.1 : -0.1);
    }
    double[] robust =
        LinearFit.weighted(design, y, Robust.bisquareWeights(design, y)).coefficients();
    // Residuals of one size get one weight, so the line is that of least squares.
    assertEquals(LinearFit.of(design, y).coefficients()[1], robust[1], 1e-3);
  }

  @Test
  void weightsOfZeroAreAsGoodAsAbsent() {
    double[][] all = {{1, 1}, {1, 2}, {1, 3}, {1, 9}};
    double[] y = {1, 2, 2.5, 100};
    LinearFit some =
        LinearFit.of(new double[][] {{1, 1}, {1, 2}, {1, 3}}, new double[] {1, 2, 2.5});
    double[] weighted = LinearFit.weighted(all, y, new double[] {1, 1, 1, 0}).coefficients();
    assertEquals(some.coefficients()[0], weighted[0], 1e-12);
    assertEquals(some.coefficients()[1], weighted[1], 1e-12);
  }

  @Test
  void halfOfTheValuesTheSameHasNoModifiedZ() {
    String message =
        assertThrows(IllegalArgumentException.class, () -> Robust.modifiedZ(1, 1, 1, 5))
            .getMessage();
    assertEquals("more than half of the values are the same", message);
  }

  @Test
  void valuesThatAreNotNumbersAreRefused() {
    String message =
        assertThrows(IllegalArgumentException.class, () -> Robust.median(1, Double.NaN))
            .getMessage();
    assertEquals("values must be finite, got NaN", message);
    message =
        assertThrows(
                IllegalArgumentException.class,
                () -> BlandAltman.of(new double[] {1, 2, 3}, new double[] {1, 2}))
            .getMessage();
    assertEquals("x and y must be of one length, got 3 and 2", message);
  }

  @Test
  void demingTurnsRoundWithItsVariables() {
    double[] x = {1, 2.2, 3.1, 4.3, 5.2};
    double[] y = {1.8, 4.1, 6.3, 8.2, 10.4};
    // Swapping the variables and the ratio gives the same line seen from the side.
    assertEquals(1, Deming.fit(x, y, 4).slope() * Deming.fit(y, x, 0.25).slope(), 1e-12);
  }

  @Test
  void yorkOfEqualWeightsIsDeming() {
    double[] x = {1, 2.2, 3.1, 4.3, 5.2};
    double[] y = {1.8, 4.1, 6.3, 8.2, 10.4};
    double[] ones = {1, 1, 1, 1, 1};
    // Equal errors in both variables are orthogonal regression.
    assertEquals(Deming.fit(x, y, 1).slope(), York.fit(x, y, ones, ones).line().slope(), 1e-10);
  }
}
