// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.junit.jupiter.api.Test;

/** The likelihood of fits, by a second way: Hipparchus' normal distribution, point by point. */
class LikelihoodTest {
  private static final double[] X = {0, 1, 2, 3, 4, 5, 6, 7};
  private static final double[] Y = {1.1, 1.9, 3.2, 3.8, 5.3, 5.9, 6.4, 6.5};
  private static final double[] WEIGHTS = {1, 4, 1, 0.25, 2, 1, 3, 1};
  private static final boolean[] BOUND = {false, false, false, false, false, false, true, true};
  private static final MeanFunction LINE =
      (x, b, gradient) -> {
        gradient[0] = 1;
        gradient[1] = x;
        return b[0] + b[1] * x;
      };

  private static Solved fit(Points points) {
    return assertInstanceOf(Solved.class, NonlinearFit.of(LINE, points, new double[2]));
  }

  /** Returns the log likelihood of a line; weights are 1 / relative variance. */
  private static double logLikelihood(double a, double b, double sigma, boolean[] bound) {
    return IntStream.range(0, X.length)
        .mapToDouble(
            i -> {
              NormalDistribution y =
                  new NormalDistribution(a + b * X[i], sigma / Math.sqrt(WEIGHTS[i]));
              return bound[i] ? Math.log(1 - y.cumulativeProbability(Y[i])) : y.logDensity(Y[i]);
            })
        .sum();
  }

  @Test
  void withoutBoundsItIsTheNormalsAtTheLikeliestDeviation() {
    Solved fit = fit(Points.of(X, Y).withWeights(WEIGHTS));
    double sigma = Math.sqrt(fit.rss() / X.length);
    double expected =
        logLikelihood(fit.parameter(0), fit.parameter(1), sigma, new boolean[X.length]);
    assertEquals(expected, fit.logLikelihood(), 1e-10);
    // Hurvich and Tsai: -2 lnL + 2k + 2k(k+1)/(n-k-1), k = 3, n = 8.
    assertEquals(-2 * expected + 6 + 24.0 / 4, fit.aicc().orElseThrow(), 1e-9);
  }

  @Test
  void withBoundsItIsDensitiesAndTailsAtTheDeviationFound() {
    Solved fit = fit(Points.of(X, Y).withWeights(WEIGHTS).withLowerBounds(BOUND));
    double expected = logLikelihood(fit.parameter(0), fit.parameter(1), fit.sigma(), BOUND);
    assertEquals(expected, fit.logLikelihood(), 1e-9);
  }

  @Test
  void noOtherLineIsLikelierAtTheDeviationFound() {
    Solved fit = fit(Points.of(X, Y).withWeights(WEIGHTS).withLowerBounds(BOUND));
    MultivariateFunction likelihood = b -> logLikelihood(b[0], b[1], fit.sigma(), BOUND);
    double[] best =
        new SimplexOptimizer(1e-14, 1e-14)
            .optimize(
                new MaxEval(20_000),
                new ObjectiveFunction(likelihood),
                GoalType.MAXIMIZE,
                new InitialGuess(new double[] {1, 1}),
                new NelderMeadSimplex(2))
            .getPoint();
    assertEquals(best[0], fit.parameter(0), 1e-5);
    assertEquals(best[1], fit.parameter(1), 1e-5);
  }

  @Test
  void theDeviationSolvesTheLikelihoodEquationLessTheParameters() {
    Solved fit = fit(Points.of(X, Y).withWeights(WEIGHTS).withLowerBounds(BOUND));
    NormalDistribution unit = new NormalDistribution();
    double share = 6 - 2;
    double rss = 0;
    for (int i = 0; i < X.length; i++) {
      double r = Y[i] - fit.parameter(0) - fit.parameter(1) * X[i];
      double z = -Math.sqrt(WEIGHTS[i]) * r / fit.sigma();
      share += BOUND[i] ? unit.density(z) / unit.cumulativeProbability(z) * z : 0;
      rss += BOUND[i] ? 0 : WEIGHTS[i] * r * r;
    }
    assertEquals(rss, fit.rss(), 1e-9);
    assertEquals(rss, fit.sigma() * fit.sigma() * share, 1e-6 * rss);
  }

  @Test
  void covarianceWithBoundsIsTheInverseOfTheLikelihoodsCurvature() {
    Solved fit = fit(Points.of(X, Y).withWeights(WEIGHTS).withLowerBounds(BOUND));
    double step = 1e-4;
    double[][] bend = new double[2][2];
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        for (int corner = 0; corner < 4; corner++) {
          double up = corner % 2 == 0 ? step : -step;
          double over = corner < 2 ? step : -step;
          double a = fit.parameter(0) + (i == 0 ? up : 0) + (j == 0 ? over : 0);
          double b = fit.parameter(1) + (i == 1 ? up : 0) + (j == 1 ? over : 0);
          double sign = Math.signum(up * over);
          bend[i][j] -= sign * logLikelihood(a, b, fit.sigma(), BOUND) / (4 * step * step);
        }
      }
    }
    double det = bend[0][0] * bend[1][1] - bend[0][1] * bend[1][0];
    assertEquals(bend[1][1] / det, fit.covariance(0, 0), 1e-4 * fit.covariance(0, 0));
    assertEquals(bend[0][0] / det, fit.covariance(1, 1), 1e-4 * fit.covariance(1, 1));
    assertEquals(-bend[0][1] / det, fit.covariance(0, 1), 1e-4 * fit.covariance(0, 0));
    double[] gradient = {1, 5};
    double variance = fit.covariance(0, 0) + 10 * fit.covariance(0, 1) + 25 * fit.covariance(1, 1);
    assertEquals(Math.sqrt(variance), fit.standardErrorOf(gradient), 1e-12);
  }

  @Test
  void aPointOfWeightZeroIsNoBoundEither() {
    double[] weights = WEIGHTS.clone();
    weights[6] = 0;
    weights[7] = 0;
    Solved without = fit(Points.of(X, Y).withWeights(weights));
    Solved with = fit(Points.of(X, Y).withWeights(weights).withLowerBounds(BOUND));
    assertEquals(without.parameter(1), with.parameter(1), 1e-12);
    assertEquals(without.logLikelihood(), with.logLikelihood(), 1e-12);
    assertEquals(4, with.degreesOfFreedom());
  }

  @Test
  void anIntervalWithAnOpenEndHoldsAllBeyond() {
    Interval open = new Interval(Interval.of(2, 3).lo(), OptionalDouble.empty());
    assertTrue(open.contains(2) && open.contains(1e300) && !open.contains(1.9));
    Interval closed = Interval.of(2, 3);
    assertTrue(closed.contains(3) && !closed.contains(3.1));
  }
}
