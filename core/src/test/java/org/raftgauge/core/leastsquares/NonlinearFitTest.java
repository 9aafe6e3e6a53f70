// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Fits of straight lines, where the answers are known in closed form, and refusals. */
class NonlinearFitTest {
  private static final MeanFunction LINE =
      (x, b, gradient) -> {
        gradient[0] = 1;
        gradient[1] = x;
        return b[0] + b[1] * x;
      };
  private static final MeanFunction LEVEL =
      (x, b, gradient) -> {
        gradient[0] = 1;
        return b[0];
      };

  @Test
  void aWeightedMeanIsTheClosedForm() {
    Points points =
        Points.of(new double[3], new double[] {1, 2, 6}).withWeights(new double[] {1, 2, 1});
    Solved fit = assertInstanceOf(Solved.class, NonlinearFit.of(LEVEL, points, new double[1]));
    // (1 + 4 + 6) / 4; RSS = 1.75^2 + 2 * 0.75^2 + 3.25^2 = 14.75; se = sqrt(14.75 / 2 / 4)
    assertEquals(2.75, fit.parameter(0), 1e-12);
    assertEquals(14.75, fit.rss(), 1e-12);
    assertEquals(Math.sqrt(14.75 / 8), fit.standardError(0), 1e-12);
  }

  @Test
  void aPointOfWeightZeroIsLeftOut() {
    double[] x = {0, 1, 2, 3, 4};
    Points all = Points.of(x, new double[] {1, 3, 5, 7, 900});
    Points fewer = all.withWeights(new double[] {1, 1, 1, 1, 0});
    assertEquals(4, fewer.observed());
    Solved fit = assertInstanceOf(Solved.class, NonlinearFit.of(LINE, fewer, new double[2]));
    assertEquals(2, fit.parameter(1), 1e-10);
    assertEquals(2, fit.degreesOfFreedom());
  }

  @Test
  void aFitFromNearbyIsTheFitFromAnywhere() {
    Random random = new Random(4);
    double[] x = new double[14];
    double[] y = new double[14];
    boolean[] bound = new boolean[14];
    for (int i = 0; i < x.length; i++) {
      x[i] = i;
      bound[i] = i > 10;
      y[i] = 2 + 0.3 * Math.min(i, 11) + 0.1 * random.nextGaussian();
    }
    MeanFunction power =
        (at, b, gradient) -> {
          gradient[0] = 1;
          gradient[1] = Math.pow(at + 1, b[2]);
          gradient[2] = b[1] * Math.pow(at + 1, b[2]) * Math.log(at + 1);
          return b[0] + b[1] * Math.pow(at + 1, b[2]);
        };
    Points points = Points.of(x, y).withLowerBounds(bound);
    Solved far =
        assertInstanceOf(Solved.class, NonlinearFit.of(power, points, new double[] {1, 1, 1}));
    double[] start = far.parameters();
    for (int j = 0; j < start.length; j++) {
      start[j] *= 1.001;
    }
    Solved near = assertInstanceOf(Solved.class, NonlinearFit.near(power, points, start));
    for (int j = 0; j < start.length; j++) {
      // Both settle to 1e-9 of sigma.
      assertEquals(far.parameter(j), near.parameter(j), 1e-7 * Math.abs(far.parameter(j)));
    }
    assertEquals(far.logLikelihood(), near.logLikelihood(), 1e-9);
  }

  @Test
  void boundsFarUnderTheLineSayNothing() {
    Random random = new Random(1);
    double[] x = new double[20];
    double[] y = new double[20];
    boolean[] bound = new boolean[20];
    double[] weights = new double[20];
    for (int i = 0; i < 20; i++) {
      x[i] = i;
      bound[i] = i >= 15;
      y[i] = bound[i] ? -50 : 1 + 0.5 * i + random.nextGaussian();
      weights[i] = bound[i] ? 0 : 1;
    }
    Points points = Points.of(x, y);
    Solved with =
        (Solved) NonlinearFit.of(LINE, points.withLowerBounds(bound), new double[] {0, 1});
    Solved without =
        (Solved) NonlinearFit.of(LINE, points.withWeights(weights), new double[] {0, 1});
    assertEquals(without.parameter(1), with.parameter(1), 1e-8);
    assertEquals(without.sigma(), with.sigma(), 1e-8);
    assertEquals(without.standardError(1), with.standardError(1), 1e-8);
  }

  @Test
  void censoredMeansAreUnbiasedAndTheirIntervalsCover() {
    // 30 values of mean 5, sd 1; whatever exceeds 5.5 is only known to do so (about 31 %).
    Random random = new Random(20);
    double sum = 0;
    int covered = 0;
    int trials = 400;
    for (int trial = 0; trial < trials; trial++) {
      double[] y = new double[30];
      boolean[] bound = new boolean[30];
      for (int i = 0; i < 30; i++) {
        y[i] = 5 + random.nextGaussian();
        bound[i] = y[i] > 5.5;
        y[i] = Math.min(5.5, y[i]);
      }
      Points points = Points.of(new double[30], y).withLowerBounds(bound);
      Solved fit = assertInstanceOf(Solved.class, NonlinearFit.of(LEVEL, points, new double[] {5}));
      sum += fit.parameter(0) / trials;
      covered += Math.abs(fit.parameter(0) - 5) < 2.05 * fit.standardError(0) ? 1 : 0;
    }
    // Standard error of the mean of 400 fits of error 0.2: 0.01; sigma's own error costs little
    assertEquals(5, sum, 0.04);
    assertEquals(0.95 * trials, covered, 0.05 * trials);
  }

  @Test
  void aLineThroughOneDayCannotBeTold() {
    Points points = Points.of(new double[5], new double[] {1, 2, 3, 4, 5});
    Unsolved not = assertInstanceOf(Unsolved.class, NonlinearFit.of(LINE, points, new double[2]));
    assertTrue(
        not.reason().equals("the points cannot tell the parameters apart (singular gradient)"),
        not.reason());
  }

  @Test
  void tooFewPointsAreNamed() {
    Points points = Points.of(new double[] {0, 1}, new double[] {1, 2});
    assertEquals(
        new Unsolved("2 points; 2 parameters need at least 3"),
        NonlinearFit.of(LINE, points, new double[2]));
  }

  @Test
  void aiccIsNotAvailableForTooFewPoints() {
    // k = 3 with sigma; n = 4 is at most k + 1
    Points points = Points.of(new double[] {0, 1, 2, 3}, new double[] {1, 2, 4, 4});
    Solved fit = (Solved) NonlinearFit.of(LINE, points, new double[2]);
    assertEquals(OptionalDouble.empty(), fit.aicc());
  }

  @Test
  void theProfileOfALineIsItsStudentInterval() {
    Points points = Points.of(new double[] {0, 1, 2, 3, 4}, new double[] {1.2, 2.9, 5.1, 7.2, 8.8});
    Solved fit = (Solved) NonlinearFit.of(LINE, points, new double[2]);
    Interval interval = ProfileInterval.of(LINE, points, fit, 1);
    // t(0.975, 3) = 3.182446305 (tables); linear models have exact profiles
    double half = 3.182446305 * fit.standardError(1);
    assertEquals(fit.parameter(1) - half, interval.lo().getAsDouble(), 1e-8);
    assertEquals(fit.parameter(1) + half, interval.hi().getAsDouble(), 1e-8);
    assertTrue(interval.contains(fit.parameter(1)));
    assertFalse(interval.contains(fit.parameter(1) + 2 * half));
  }

  @Test
  void nonsenseIsRefused() {
    double[] two = {0, 1};
    assertEquals(
        "y must have length 2, got 1",
        assertThrows(IllegalArgumentException.class, () -> Points.of(two, new double[1]))
            .getMessage());
    assertEquals(
        "weights must be finite and >= 0, got -1.0",
        assertThrows(
                IllegalArgumentException.class,
                () -> Points.of(two, two).withWeights(new double[] {1, -1}))
            .getMessage());
    assertEquals(
        "point 1 must be finite, got x 1.0, y NaN",
        assertThrows(
                IllegalArgumentException.class, () -> Points.of(two, new double[] {0, Double.NaN}))
            .getMessage());
  }
}
