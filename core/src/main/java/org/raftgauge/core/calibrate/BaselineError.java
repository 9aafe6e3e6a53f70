// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/** The standard error of a baseline, from the curvature of a least-squares fit. */
final class BaselineError {

  private BaselineError() {}

  /**
   * Returns it.
   *
   * @param jacobian of the fit, each row over the standard deviation of its residual
   * @param pair column of the first of the pair's six numbers: turn, then shift in mm
   * @param between how the cameras stand
   * @return standard error of the baseline's length, mm
   */
  static double of(RealMatrix jacobian, int pair, ViewPose between) {
    int n = jacobian.getColumnDimension();
    double[] scale = new double[n];
    RealMatrix scaled = jacobian.copy();
    for (int c = 0; c < n; c++) {
      scale[c] = 1 / jacobian.getColumnVector(c).getNorm();
      scaled.setColumnVector(c, jacobian.getColumnVector(c).mapMultiply(scale[c]));
    }
    RealMatrix upper = new QRDecomposition(scaled).getR().getSubMatrix(0, n - 1, 0, n - 1);
    RealMatrix inverse = MatrixUtils.inverse(upper);
    RealMatrix covariance = inverse.multiplyTransposed(inverse);
    List<Double> t = between.shiftMm();
    double length = Math.sqrt(t.stream().mapToDouble(v -> v * v).sum());
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        int a = pair + 3 + i;
        int b = pair + 3 + k;
        sum += t.get(i) * scale[a] * covariance.getEntry(a, b) * scale[b] * t.get(k);
      }
    }
    return Math.sqrt(sum) / length;
  }
}
