// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * A linear model fitted by least squares, {@code y = X b + e}, by Householder QR (Hipparchus).
 *
 * <p>Standard errors are {@code s sqrt(diag((X'X)^-1))} with {@code s^2} the residual sum of
 * squares over {@code n - p}.
 */
public final class LinearFit {
  private final double[] coefficients;
  private final double[][] unscaled;
  private final double[] residuals;
  private final double[] leverage;
  private final double residualSd;

  private LinearFit(
      double[] coefficients, double[][] unscaled, double[] residuals, double[] leverage) {
    this.coefficients = coefficients;
    this.unscaled = unscaled;
    this.residuals = residuals;
    this.leverage = leverage;
    this.residualSd = Math.sqrt(sumOfSquares(residuals) / degreesOfFreedom());
  }

  /**
   * Fits.
   *
   * @param design n rows of p numbers, n above p, columns not dependent on each other; a column of
   *     ones where a constant is wanted
   * @param y n values
   * @return the fit
   * @throws IllegalArgumentException if the sizes do not fit or the columns depend on each other
   */
  public static LinearFit of(double[][] design, double[] y) {
    if (design.length != y.length || design.length == 0 || design.length <= design[0].length) {
      throw new IllegalArgumentException(
          "a fit needs more rows than columns and a value for each, got "
              + design.length
              + " rows and "
              + y.length
              + " values");
    }
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
    regression.setNoIntercept(true);
    try {
      regression.newSampleData(y, design);
      double[] coefficients = regression.estimateRegressionParameters();
      double[][] unscaled = regression.estimateRegressionParametersVariance();
      return new LinearFit(
          coefficients, unscaled, residuals(design, y, coefficients), leverage(design, unscaled));
    } catch (MathRuntimeException dependent) {
      throw new IllegalArgumentException(
          "the columns of the design depend on each other: " + dependent.getMessage(), dependent);
    }
  }

  /**
   * Fits with weights: rows count by the inverse of their error variance.
   *
   * @param design as for {@link #of}
   * @param y n values
   * @param weights n weights, at least 0, more than p of them above 0
   * @return the fit of the rows scaled by the roots of their weights
   */
  public static LinearFit weighted(double[][] design, double[] y, double[] weights) {
    double[][] scaled = new double[design.length][];
    double[] values = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      double root = Math.sqrt(weights[i]);
      values[i] = root * y[i];
      scaled[i] = new double[design[i].length];
      for (int j = 0; j < design[i].length; j++) {
        scaled[i][j] = root * design[i][j];
      }
    }
    return of(scaled, values);
  }

  private static double[] residuals(double[][] design, double[] y, double[] b) {
    double[] residuals = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      residuals[i] = y[i] - dot(design[i], b);
    }
    return residuals;
  }

  private static double[] leverage(double[][] design, double[][] unscaled) {
    double[] leverage = new double[design.length];
    for (int i = 0; i < design.length; i++) {
      leverage[i] = form(design[i], unscaled, design[i]);
    }
    return leverage;
  }

  /**
   * Returns {@code sum(a_i b_i)}.
   *
   * @param a any numbers
   * @param b as many
   * @return the sum of products
   */
  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /**
   * Returns {@code a' M b}.
   *
   * @param a p numbers
   * @param matrix p rows of p numbers
   * @param b p numbers
   * @return the bilinear form
   */
  public static double form(double[] a, double[][] matrix, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * dot(matrix[i], b);
    }
    return sum;
  }

  private static double sumOfSquares(double[] x) {
    return dot(x, x);
  }

  /** Returns the coefficients, p of them. */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /** Returns the residuals, y minus fitted, n of them. */
  public double[] residuals() {
    return residuals.clone();
  }

  /** Returns the leverages, the diagonal of the hat matrix, n of them, 0..1. */
  public double[] leverage() {
    return leverage.clone();
  }

  /** Returns the residual standard deviation, with {@code n - p}. */
  public double residualSd() {
    return residualSd;
  }

  /** Returns {@code n - p}. */
  public int degreesOfFreedom() {
    return residuals.length - coefficients.length;
  }

  /** Returns the covariance of the coefficients, p by p. */
  public double[][] covariance() {
    double[][] covariance = new double[unscaled.length][];
    for (int i = 0; i < unscaled.length; i++) {
      covariance[i] = unscaled[i].clone();
      for (int j = 0; j < unscaled.length; j++) {
        covariance[i][j] *= residualSd * residualSd;
      }
    }
    return covariance;
  }

  /** Returns {@code (X'X)^-1}, p by p. */
  public double[][] unscaledCovariance() {
    double[][] copy = new double[unscaled.length][];
    for (int i = 0; i < unscaled.length; i++) {
      copy[i] = unscaled[i].clone();
    }
    return copy;
  }

  /** Returns the standard errors of the coefficients, p of them. */
  public double[] standardErrors() {
    double[] errors = new double[unscaled.length];
    for (int i = 0; i < errors.length; i++) {
      errors[i] = residualSd * Math.sqrt(unscaled[i][i]);
    }
    return errors;
  }

  /**
   * Returns the leave-one-out residuals, {@code e_i / (1 - h_i)}: what each y misses by when the
   * line is fitted to the others.
   *
   * <p>Source: Allen 1974, Technometrics 16:125-127 (PRESS).
   */
  public double[] leaveOneOut() {
    double[] left = new double[residuals.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = residuals[i] / Math.max(1e-12, 1 - leverage[i]);
    }
    return left;
  }
}
