// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/** Profiles of a rise to a level, which is linear in the level: the rest is solved in one line. */
class ProfileIntervalTest {
  private static final double[] X = {0.5, 1, 1.5, 2, 3, 4, 5};
  private static final double[] Y = {1.6, 2.8, 3.5, 4.4, 5.0, 5.6, 5.7};
  private static final MeanFunction RISE =
      (x, b, gradient) -> {
        double e = Math.exp(-b[1] * x);
        gradient[0] = 1 - e;
        gradient[1] = b[0] * x * e;
        return b[0] * (1 - e);
      };

  /** Returns the sum of squares at a rate, the level being the best one. */
  private static double squares(double rate) {
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < X.length; i++) {
      double u = 1 - Math.exp(-rate * X[i]);
      xy += u * Y[i];
      xx += u * u;
    }
    double sum = 0;
    for (int i = 0; i < X.length; i++) {
      sum += Math.pow(Y[i] - xy / xx * (1 - Math.exp(-rate * X[i])), 2);
    }
    return sum;
  }

  @Test
  void endsAreWhereTheSumHasRisenByStudentsSquare() {
    Points points = Points.of(X, Y);
    Solved fit =
        assertInstanceOf(Solved.class, NonlinearFit.of(RISE, points, new double[] {5, 0.5}));
    Interval rate = ProfileInterval.of(RISE, points, fit, 1);
    double t = new TDistribution(5).inverseCumulativeProbability(0.975);
    double limit = fit.rss() + t * t * fit.rss() / 5;
    assertEquals(limit, squares(rate.lo().orElseThrow()), 1e-6 * limit);
    assertEquals(limit, squares(rate.hi().orElseThrow()), 1e-6 * limit);
    assertTrue(rate.lo().getAsDouble() < fit.parameter(1));
    assertTrue(rate.hi().getAsDouble() > fit.parameter(1));
    // A level has its own best rate; at the ends of its interval the sum is the same.
    Interval level = ProfileInterval.of(RISE, points, fit, 0);
    for (double end : new double[] {level.lo().orElseThrow(), level.hi().orElseThrow()}) {
      double least = Double.POSITIVE_INFINITY;
      for (double r = 0.2; r < 2; r += 1e-5) {
        double sum = 0;
        for (int i = 0; i < X.length; i++) {
          sum += Math.pow(Y[i] - end * (1 - Math.exp(-r * X[i])), 2);
        }
        least = Math.min(least, sum);
      }
      assertEquals(limit, least, 1e-4 * limit);
    }
  }

  @Test
  void aRiseThatHasNotBentYetHasAnOpenLevel() {
    double[] x = {0.1, 0.2, 0.3, 0.4, 0.5};
    double[] y = {0.11, 0.19, 0.29, 0.4, 0.47};
    // Level and rate in logs, so that neither is under 0.
    MeanFunction rise =
        (t, b, gradient) -> {
          double risen = -Math.expm1(-Math.exp(b[1]) * t);
          gradient[0] = Math.exp(b[0]) * risen;
          gradient[1] = Math.exp(b[0] + b[1]) * t * (1 - risen);
          return gradient[0];
        };
    Points points = Points.of(x, y);
    Solved fit =
        assertInstanceOf(Solved.class, NonlinearFit.of(rise, points, new double[] {0.5, -0.5}));
    Interval level = ProfileInterval.of(rise, points, fit, 0);
    assertTrue(level.lo().orElseThrow() > Math.log(0.47), "it is at least what was seen");
    assertTrue(level.hi().isEmpty(), "a straight line fits as well: " + level);
    assertTrue(level.contains(1e9));
  }

  @Test
  void oneParameterHasNoProfile() {
    MeanFunction flat =
        (x, b, gradient) -> {
          gradient[0] = 1;
          return b[0];
        };
    Points points = Points.of(X, Y);
    Solved fit = (Solved) NonlinearFit.of(flat, points, new double[1]);
    assertEquals(
        "fit must have at least 2 parameters, got 1",
        assertThrows(IllegalArgumentException.class, () -> ProfileInterval.of(flat, points, fit, 0))
            .getMessage());
  }
}
