// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * A second-order surface {@code c0 + c1 u + c2 v + c3 u^2 + c4 u v + c5 v^2}, fitted robustly.
 *
 * <p>Source: iteratively re-weighted least squares with Tukey's biweight (Mosteller and Tukey
 * 1977), a small ridge on all but the constant so that a few points in a corner cannot bend it.
 */
final class Surface {
  private static final int TERMS = 6;
  private static final double RIDGE = 0.02;
  private static final int ROUNDS = 6;

  /** Tukey's biweight at 95 % efficiency. */
  private static final double TUNING = 4.685;

  private Surface() {}

  /** Returns a flat surface. */
  static double[] flat(double value) {
    return new double[] {value, 0, 0, 0, 0, 0};
  }

  static double at(double[] c, double u, double v) {
    return c[0] + c[1] * u + c[2] * v + c[3] * u * u + c[4] * u * v + c[5] * v * v;
  }

  /**
   * Fits points (u, v, value), at least one; {@code scale} is the least spread of residuals taken
   * as noise.
   */
  static double[] fit(double[][] points, double scale) {
    double[] values = new double[points.length];
    for (int i = 0; i < points.length; i++) {
      values[i] = points[i][2];
    }
    double[] c = flat(Quantile.of(values, 0.5));
    for (int round = 0; round < ROUNDS; round++) {
      double[] sizes = new double[points.length];
      for (int i = 0; i < points.length; i++) {
        sizes[i] = Math.abs(points[i][2] - at(c, points[i][0], points[i][1]));
      }
      double spread = Math.max(scale, 1.4826 * Quantile.of(sizes, 0.5));
      c = solve(points, c, TUNING * spread);
    }
    return c;
  }

  private static double[] solve(double[][] points, double[] from, double cut) {
    double[][] a = new double[TERMS][TERMS];
    double[] b = new double[TERMS];
    double total = 0;
    double[] x = {1, 0, 0, 0, 0, 0};
    for (double[] p : points) {
      double r = (p[2] - at(from, p[0], p[1])) / cut;
      if (Math.abs(r) >= 1) {
        continue;
      }
      double w = (1 - r * r) * (1 - r * r);
      x[1] = p[0];
      x[2] = p[1];
      x[3] = p[0] * p[0];
      x[4] = p[0] * p[1];
      x[5] = p[1] * p[1];
      for (int i = 0; i < TERMS; i++) {
        for (int j = i; j < TERMS; j++) {
          a[i][j] += w * (x[i] * x[j]);
        }
        b[i] += w * x[i] * p[2];
      }
      total += w;
    }
    if (total <= 0) {
      return from;
    }
    for (int i = 1; i < TERMS; i++) {
      a[i][i] += RIDGE * total;
    }
    a[0][0] += 1e-9 * total;
    for (int i = 0; i < TERMS; i++) {
      for (int j = 0; j < i; j++) {
        a[i][j] = a[j][i];
      }
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false))
        .getSolver()
        .solve(new ArrayRealVector(b))
        .toArray();
  }
}
