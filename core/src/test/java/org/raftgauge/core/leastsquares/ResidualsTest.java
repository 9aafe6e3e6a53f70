// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Residuals of a bent curve, point by point, their slopes by differences. */
class ResidualsTest {
  private static final MeanFunction CURVE =
      (x, b, gradient) -> {
        double e = Math.exp(b[1] * x);
        gradient[0] = e;
        gradient[1] = b[0] * x * e;
        return b[0] * e;
      };
  private static final Points POINTS =
      Points.of(new double[] {0, 1, 2, 3}, new double[] {2, 2.5, 4, 5})
          .withWeights(new double[] {1, 4, 0, 9})
          .withLowerBounds(new boolean[] {false, false, false, true});
  private static final double SIGMA = 0.7;
  private static final double[] AT = {1.8, 0.35};

  @Test
  void observedPointsAreWeighedAndBoundsAreDeviances() {
    Residuals residuals = new Residuals(CURVE, POINTS, SIGMA);
    double cost = residuals.evaluate(AT);
    double[] minus = residuals.minusResiduals();
    assertEquals(1.8 - 2, minus[0], 1e-12);
    assertEquals(2 * (1.8 * Math.exp(0.35) - 2.5), minus[1], 1e-12);
    assertEquals(0, minus[2], 0);
    double z = 3 * (1.8 * Math.exp(1.05) - 5) / SIGMA;
    double above = new NormalDistribution().cumulativeProbability(z);
    assertEquals(-SIGMA * Math.sqrt(-2 * Math.log(above)), minus[3], 1e-10);
    double sum = 0;
    for (double each : minus) {
      sum += each * each;
    }
    assertEquals(sum, cost, 1e-12);
    assertEquals(4, residuals.size());
  }

  @Test
  void slopesAreThoseOfTheResiduals() {
    Residuals residuals = new Residuals(CURVE, POINTS, SIGMA);
    residuals.evaluate(AT);
    double[][] slopes = new double[4][];
    for (int i = 0; i < 4; i++) {
      slopes[i] = residuals.jacobian()[i].clone();
    }
    for (int j = 0; j < 2; j++) {
      double[] up = AT.clone();
      double[] down = AT.clone();
      up[j] += 1e-6;
      down[j] -= 1e-6;
      residuals.evaluate(up);
      double[] more = residuals.minusResiduals().clone();
      residuals.evaluate(down);
      for (int i = 0; i < 4; i++) {
        double slope = (more[i] - residuals.minusResiduals()[i]) / 2e-6;
        assertEquals(slope, slopes[i][j], 1e-6, i + "," + j);
      }
    }
  }

  @Test
  void theBestPointIsKeptWhateverComesAfter() {
    Residuals residuals = new Residuals(CURVE, POINTS, SIGMA);
    double first = residuals.evaluate(new double[] {9, 1});
    double better = residuals.evaluate(AT);
    residuals.evaluate(new double[] {30, 1});
    assertTrue(better < first);
    assertArrayEquals(AT, residuals.best(), 0);
    assertEquals(better, residuals.bestCost(), 0);
    assertNotSame(residuals.best(), residuals.best());
  }

  @Test
  void whatIsNotFiniteIsFarAwayAndHasNoSlope() {
    MeanFunction broken =
        (x, b, gradient) -> {
          gradient[0] = x == 1 ? Double.NaN : 3;
          return x == 0 ? Double.POSITIVE_INFINITY : 1;
        };
    Points points = Points.of(new double[] {0, 1, 2}, new double[3]);
    Residuals residuals = new Residuals(broken, points, 1);
    assertEquals(2e200, residuals.evaluate(new double[] {1}), 1e188);
    assertEquals(0, residuals.jacobian()[0][0], 0);
    assertEquals(0, residuals.jacobian()[1][0], 0);
    assertEquals(3, residuals.jacobian()[2][0], 0);
    assertArrayEquals(new double[] {1e100, 1e100, 1}, residuals.minusResiduals(), 0);
  }

  @Test
  void aBoundFarUnderTheCurveHasNoSlope() {
    Residuals residuals =
        new Residuals(
            CURVE,
            Points.of(new double[] {0}, new double[] {-1e4}).withLowerBounds(new boolean[] {true}),
            1);
    assertEquals(0, residuals.evaluate(AT), 0);
    assertEquals(0, residuals.jacobian()[0][0], 0);
  }
}
