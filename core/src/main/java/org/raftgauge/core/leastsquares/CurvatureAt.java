// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/**
 * The covariance of fitted parameters: the inverse information, lower bounds at their own weight.
 */
final class CurvatureAt {
  private CurvatureAt() {}

  /** Returns the covariance; an empty array where the information is singular. */
  static double[][] inverse(MeanFunction mean, Points points, double[] at, double sigma) {
    int p = at.length;
    double[][] rows = new double[points.size()][p];
    for (int i = 0; i < rows.length; i++) {
      if (points.weight(i) == 0) {
        continue;
      }
      double value = mean.at(points.x(i), at, rows[i]);
      double weight = points.weight(i);
      if (points.isLowerBound(i)) {
        weight *= CensoredTerm.information(NonlinearFit.z(value, points, i, sigma));
      }
      for (int j = 0; j < p; j++) {
        rows[i][j] *= Math.sqrt(weight);
      }
    }
    Linearised linear = Linearised.of(new double[rows.length], rows);
    if (linear.isSingular()) {
      return new double[0][];
    }
    double[][] covariance = linear.inverseInformation();
    for (double[] row : covariance) {
      for (int j = 0; j < p; j++) {
        row[j] *= sigma * sigma;
      }
    }
    return covariance;
  }
}
