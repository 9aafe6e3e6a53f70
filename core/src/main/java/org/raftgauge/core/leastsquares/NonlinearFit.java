// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * Nonlinear least squares by Levenberg-Marquardt, with censored points by maximum likelihood.
 *
 * <p>With lower bounds among the points the normal likelihood {@code prod phi(r/s)/s prod Phi(z)}
 * is maximised: for a given s by least squares on deviance residuals, and s in turn from {@code s^2
 * (n - p + sum h z) = RSS}, the likelihood equation of s less p degrees of freedom.
 *
 * <p>Source: Tobin 1958, Econometrica 26:24-36; More 1978 (MINPACK) for Levenberg-Marquardt.
 */
public final class NonlinearFit {
  /** Relative offset (Bates and Watts 1981 use 0.001) under which a fit counts as converged. */
  private static final double CONVERGED = 1e-5;

  private static final int MOST_SIGMA_ROUNDS = 60;
  private static final String SINGULAR =
      "the points cannot tell the parameters apart (singular gradient)";

  private NonlinearFit() {}

  /**
   * Fits a curve to points.
   *
   * @param mean the curve
   * @param points at least one more fully observed point than parameters, else unsolved
   * @param start first guess of the parameters
   */
  public static FitOutcome of(MeanFunction mean, Points points, double[] start) {
    return settled(mean, points, start, p -> minimum(mean, points, 1, p));
  }

  /**
   * Fits a curve to points from parameters that are close to the best ones, such as those of the
   * same points with slightly other weights: the same fit, sooner.
   *
   * @param mean the curve
   * @param points as for {@link #of}
   * @param start close to the best parameters
   */
  public static FitOutcome near(MeanFunction mean, Points points, double[] start) {
    return settled(mean, points, start, p -> nearMinimum(mean, points, 1, p));
  }

  /**
   * Goes a few steps from parameters that are close to the best ones towards them: for weights that
   * are not the last ones.
   *
   * @param mean the curve
   * @param points the points
   * @param sigma their deviation at weight 1
   * @param at close to the best parameters
   * @return parameters that fit no worse
   */
  public static double[] towards(MeanFunction mean, Points points, double sigma, double[] at) {
    return Descent.towards(at, new Residuals(mean, points, sigma));
  }

  /**
   * Returns the way from some parameters to where the curve, taken as straight there, fits best.
   *
   * @param mean the curve
   * @param points the points
   * @param sigma their deviation at weight 1
   * @param at the parameters
   * @return the step; empty where the points cannot tell the parameters apart there
   */
  public static double[] step(MeanFunction mean, Points points, double sigma, double[] at) {
    Linearised here = Linearised.at(at, new Residuals(mean, points, sigma));
    return here.isSingular() ? new double[0] : here.gaussNewtonStep();
  }

  /** Parameters with the deviation that goes with them. */
  private static final class Found {
    private final double[] at;
    private final double sigma;

    Found(double[] at, double sigma) {
      this.at = at;
      this.sigma = sigma;
    }
  }

  private static FitOutcome settled(
      MeanFunction mean, Points points, double[] start, UnaryOperator<double[]> first) {
    int p = start.length;
    int n = points.observed();
    if (n < p + 1) {
      return new Unsolved(n + " points; " + p + " parameters need at least " + (p + 1));
    }
    Found found = found(mean, points, first.apply(start));
    return judged(mean, points, found.at, found.sigma);
  }

  /** Goes on from the best parameters at a deviation of 1 to those at the likeliest deviation. */
  private static Found found(MeanFunction mean, Points points, double[] first) {
    int p = first.length;
    int n = points.observed();
    double sigma = 1;
    double[] at = first;
    if (hasBounds(points)) {
      sigma = firstSigma(mean, points, at, n - p);
      for (int round = 0; round < MOST_SIGMA_ROUNDS; round++) {
        at = nearMinimum(mean, points, sigma, at);
        double next = nextSigma(mean, points, at, sigma);
        boolean settled = Math.abs(next - sigma) < 1e-9 * sigma;
        sigma = next;
        if (settled) {
          break;
        }
      }
    } else {
      sigma = Math.sqrt(rss(mean, points, at) / (n - p));
    }
    return new Found(at, sigma);
  }

  /** Returns the parameters that make the likelihood largest for a known sigma. */
  static double[] minimum(MeanFunction mean, Points points, double sigma, double[] start) {
    Residuals residuals = new Residuals(mean, points, sigma);
    return Descent.from(start, residuals);
  }

  private static double[] nearMinimum(
      MeanFunction mean, Points points, double sigma, double[] start) {
    return Descent.near(start, new Residuals(mean, points, sigma));
  }

  private static FitOutcome judged(MeanFunction mean, Points points, double[] at, double sigma) {
    double used = Math.max(sigma, Double.MIN_NORMAL);
    Linearised here = Linearised.at(at, new Residuals(mean, points, used));
    if (here.isSingular()) {
      return new Unsolved(SINGULAR, OptionalDouble.of(here.cost()));
    }
    double slack = 1e-9 * length(points);
    if (here.cost() > slack * slack && here.relativeOffset() > CONVERGED) {
      return new Unsolved("the fit did not settle on one curve", OptionalDouble.of(here.cost()));
    }
    double[][] covariance = CurvatureAt.inverse(mean, points, at, used);
    if (covariance.length == 0) {
      return new Unsolved(SINGULAR, OptionalDouble.of(here.cost()));
    }
    double rss = rss(mean, points, at);
    double lnL = hasBounds(points) ? tobit(mean, points, at, used) : gaussian(points, rss);
    return new Solved(at, covariance, new Goodness(rss, sigma, lnL, points.observed()));
  }

  private static boolean hasBounds(Points points) {
    for (int i = 0; i < points.size(); i++) {
      if (points.isLowerBound(i) && points.weight(i) > 0) {
        return true;
      }
    }
    return false;
  }

  private static double rss(MeanFunction mean, Points points, double[] at) {
    double sum = 0;
    double[] gradient = new double[at.length];
    for (int i = 0; i < points.size(); i++) {
      if (points.weight(i) > 0 && !points.isLowerBound(i)) {
        double r = points.y(i) - mean.at(points.x(i), at, gradient);
        sum += points.weight(i) * r * r;
      }
    }
    return sum;
  }

  /** Returns the residual deviation of the observed points, as the first guess of sigma. */
  private static double firstSigma(MeanFunction mean, Points points, double[] at, int df) {
    return Math.max(Math.sqrt(rss(mean, points, at) / df), 1e-9 * length(points));
  }

  private static double nextSigma(MeanFunction mean, Points points, double[] at, double sigma) {
    double share = points.observed() - at.length;
    double[] gradient = new double[at.length];
    for (int i = 0; i < points.size(); i++) {
      if (points.isLowerBound(i) && points.weight(i) > 0) {
        double z = z(mean.at(points.x(i), at, gradient), points, i, sigma);
        share += Math.max(-1, CensoredTerm.hazard(z) * z);
      }
    }
    // A bound far above the curve would drive the share under 0; sigma then grows by steps.
    double variance = rss(mean, points, at) / Math.max(share, 0.25);
    return Math.max(Math.sqrt(variance), 1e-9 * length(points));
  }

  static double z(double mean, Points points, int i, double sigma) {
    return Math.sqrt(points.weight(i)) * (mean - points.y(i)) / sigma;
  }

  private static double gaussian(Points points, double rss) {
    int n = points.observed();
    return -0.5 * n * (Math.log(2 * Math.PI) + Math.log(rss / n) + 1) + halfLogWeights(points);
  }

  private static double tobit(MeanFunction mean, Points points, double[] at, double sigma) {
    double sum = halfLogWeights(points);
    double[] gradient = new double[at.length];
    for (int i = 0; i < points.size(); i++) {
      if (points.weight(i) > 0) {
        double z = z(mean.at(points.x(i), at, gradient), points, i, sigma);
        sum +=
            points.isLowerBound(i)
                ? CensoredTerm.logPhi(z)
                : -0.5 * (z * z + Math.log(2 * Math.PI)) - Math.log(sigma);
      }
    }
    return sum;
  }

  private static double halfLogWeights(Points points) {
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      sum += points.weight(i) > 0 && !points.isLowerBound(i) ? Math.log(points.weight(i)) / 2 : 0;
    }
    return sum;
  }

  private static double length(Points points) {
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      sum += points.weight(i) * points.y(i) * points.y(i);
    }
    return Math.sqrt(sum);
  }
}
