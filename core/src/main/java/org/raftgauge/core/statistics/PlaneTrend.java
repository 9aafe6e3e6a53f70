// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * A plane through values over a board: {@code value = level + xSlope x + ySlope y}, least squares.
 *
 * @param level value at x = y = 0
 * @param xSlope change per unit along x
 * @param ySlope change per unit along y
 * @param xSlopeError standard error of {@code xSlope}
 * @param ySlopeError standard error of {@code ySlope}
 * @param r2 share of the variance that the plane explains
 * @param p p value of no slope at all (F test)
 */
public record PlaneTrend(
    double level,
    double xSlope,
    double ySlope,
    double xSlopeError,
    double ySlopeError,
    double r2,
    double p) {
  /**
   * Fits the plane.
   *
   * @param x places along the board
   * @param y places across it, same length
   * @param values one value per place, same length
   * @return empty under 5 places, where all lie on one line, or where all values are the same
   */
  public static Optional<PlaneTrend> of(double[] x, double[] y, double[] values) {
    if (x.length != y.length || x.length != values.length) {
      throw new IllegalArgumentException("x, y and values must have one length");
    }
    int n = x.length;
    if (n < 5) {
      return Optional.empty();
    }
    double[][] places = new double[n][];
    for (int i = 0; i < n; i++) {
      places[i] = new double[] {x[i], y[i]};
    }
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression(1e-9);
    try {
      regression.newSampleData(values, places);
      double[] b = regression.estimateRegressionParameters();
      double[] se = regression.estimateRegressionParametersStandardErrors();
      double total = regression.calculateTotalSumOfSquares();
      double residual = regression.calculateResidualSumOfSquares();
      if (!(total > 0)) {
        return Optional.empty();
      }
      double f = (total - residual) / 2 / (residual / (n - 3));
      double p =
          residual > 0 ? 1 - new FDistribution(2, n - 3).cumulativeProbability(Math.max(0, f)) : 0;
      return Optional.of(new PlaneTrend(b[0], b[1], b[2], se[1], se[2], 1 - residual / total, p));
    } catch (MathRuntimeException onOneLine) {
      return Optional.empty();
    }
  }
}
