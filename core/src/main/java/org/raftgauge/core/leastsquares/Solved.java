// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.OptionalDouble;

/**
 * Fitted parameters, their covariance, and how well the curve fits.
 *
 * <p>Without lower bounds the covariance is {@code s^2 (J'WJ)^-1} with {@code s^2 = RSS / (n - p)};
 * with them it is the inverse of the observed information of the censored normal likelihood.
 */
public final class Solved implements FitOutcome {
  private final double[] parameters;
  private final double[][] covariance;
  private final Goodness goodness;

  Solved(double[] parameters, double[][] covariance, Goodness goodness) {
    this.parameters = parameters;
    this.covariance = covariance;
    this.goodness = goodness;
  }

  /** Returns the number of parameters. */
  public int parameterCount() {
    return parameters.length;
  }

  /** Returns parameter {@code i}. */
  public double parameter(int i) {
    return parameters[i];
  }

  /** Returns a copy of all parameters. */
  public double[] parameters() {
    return parameters.clone();
  }

  /** Returns the covariance of parameters {@code i} and {@code j}. */
  public double covariance(int i, int j) {
    return covariance[i][j];
  }

  /** Returns the standard error of parameter {@code i}. */
  public double standardError(int i) {
    return Math.sqrt(covariance[i][i]);
  }

  /**
   * Returns the standard error of a function of the parameters by the delta method.
   *
   * @param gradient partial derivatives of the function by each parameter, at the fit
   */
  public double standardErrorOf(double[] gradient) {
    double sum = 0;
    for (int i = 0; i < gradient.length; i++) {
      for (int j = 0; j < gradient.length; j++) {
        sum += gradient[i] * covariance[i][j] * gradient[j];
      }
    }
    return Math.sqrt(Math.max(0, sum));
  }

  /** Returns the weighted residual sum of squares of the fully observed points. */
  public double rss() {
    return goodness.rss();
  }

  /** Returns the residual standard deviation at weight 1. */
  public double sigma() {
    return goodness.sigma();
  }

  /** Returns fully observed points less parameters, at least 1. */
  public int degreesOfFreedom() {
    return goodness.observed() - parameters.length;
  }

  /** Returns the log likelihood with sigma at its maximum-likelihood value, weights included. */
  public double logLikelihood() {
    return goodness.logLikelihood();
  }

  /**
   * Returns Akaike's criterion corrected for small samples, sigma counted as a parameter.
   *
   * <p>{@code -2 lnL + 2k + 2k(k+1)/(n-k-1)}, k parameters and sigma, n fully observed points.
   *
   * <p>Source: Hurvich and Tsai 1989, Biometrika 76:297-307.
   *
   * @return empty where n is at most k + 1
   */
  public OptionalDouble aicc() {
    int k = parameters.length + 1;
    int n = goodness.observed();
    if (n <= k + 1) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        -2 * goodness.logLikelihood() + 2 * k + 2.0 * k * (k + 1) / (n - k - 1));
  }
}
