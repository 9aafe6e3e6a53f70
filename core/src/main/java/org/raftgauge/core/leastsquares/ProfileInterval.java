// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.OptionalDouble;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.exception.MathRuntimeException;

/**
 * Interval of one parameter by the profile of the sum of squares: where {@code (S(theta) - S) /
 * s^2} reaches the square of Student's t, the other parameters fitted anew.
 *
 * <p>Source: Bates and Watts 1988, Nonlinear Regression Analysis, section 6.1. Lower bounds enter
 * by their deviance at the fitted sigma.
 */
public final class ProfileInterval {
  /** Steps outward, in standard errors, after which an end counts as open; working value. */
  private static final double[] OUTWARD = {0.5, 1, 1.5, 2.25, 3.4, 5, 8, 12, 20, 40, 80};

  private final MeanFunction mean;
  private final Points points;
  private final Solved fit;
  private final int index;

  private ProfileInterval(MeanFunction mean, Points points, Solved fit, int index) {
    this.mean = mean;
    this.points = points;
    this.fit = fit;
    this.index = index;
  }

  /**
   * Returns the 95 % interval of a parameter of a fit with at least two parameters.
   *
   * @param mean the fitted curve
   * @param points what it was fitted to
   * @param fit the fit
   * @param index the parameter, 0-based
   */
  public static Interval of(MeanFunction mean, Points points, Solved fit, int index) {
    if (fit.parameterCount() < 2) {
      throw new IllegalArgumentException(
          "fit must have at least 2 parameters, got " + fit.parameterCount());
    }
    ProfileInterval profile = new ProfileInterval(mean, points, fit, index);
    return new Interval(profile.end(-1), profile.end(1));
  }

  private OptionalDouble end(int side) {
    double limit = new TDistribution(fit.degreesOfFreedom()).inverseCumulativeProbability(0.975);
    double step = side * limit * fit.standardError(index);
    double estimate = fit.parameter(index);
    Walk walk = new Walk(limit);
    double inner = estimate;
    for (double reach : OUTWARD) {
      double outer = estimate + reach * step;
      if (walk.value(outer) >= 0) {
        return crossing(walk, inner, outer);
      }
      inner = outer;
    }
    return OptionalDouble.empty();
  }

  private OptionalDouble crossing(Walk walk, double inner, double outer) {
    if (inner == fit.parameter(index)) {
      inner += 1e-6 * (outer - inner);
    }
    try {
      double lo = Math.min(inner, outer);
      double hi = Math.max(inner, outer);
      double accuracy = 1e-10 * Math.max(Math.abs(lo), Math.abs(hi));
      return OptionalDouble.of(new BrentSolver(1e-10, accuracy).solve(200, walk, lo, hi));
    } catch (MathRuntimeException notBracketed) {
      return OptionalDouble.empty();
    }
  }

  /** The signed root of the rise in the sum of squares, less its limit, along one side. */
  private final class Walk implements UnivariateFunction {
    private final double limit;
    private double[] others;

    Walk(double limit) {
      this.limit = limit;
      this.others = without(fit.parameters(), index);
    }

    @Override
    public double value(double fixed) {
      MeanFunction rest = (x, parameters, gradient) -> atFixed(fixed, x, parameters, gradient);
      Residuals residuals = new Residuals(rest, points, fit.sigma());
      double[] found = Descent.from(others, residuals);
      double rise = Math.sqrt(Math.max(0, residuals.bestCost() - leastCost())) / fit.sigma();
      if (rise < limit) {
        others = found;
      }
      return rise - limit;
    }
  }

  private double leastCost() {
    Residuals residuals = new Residuals(mean, points, fit.sigma());
    return residuals.evaluate(fit.parameters());
  }

  private double atFixed(double fixed, double x, double[] others, double[] gradient) {
    double[] all = new double[others.length + 1];
    for (int j = 0, k = 0; j < all.length; j++) {
      all[j] = j == index ? fixed : others[k++];
    }
    double[] whole = new double[all.length];
    double value = mean.at(x, all, whole);
    System.arraycopy(without(whole, index), 0, gradient, 0, gradient.length);
    return value;
  }

  private static double[] without(double[] all, int index) {
    double[] out = new double[all.length - 1];
    for (int j = 0, k = 0; j < all.length; j++) {
      if (j != index) {
        out[k++] = all[j];
      }
    }
    return out;
  }
}
