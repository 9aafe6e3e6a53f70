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

  /** Powers of u and v in each term, and the highest in a product of two. */
  private static final int[][] POWERS = {{0, 0}, {1, 0}, {0, 1}, {2, 0}, {1, 1}, {0, 2}};

  private static final int HIGHEST = 4;
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
    double[][] moments = new double[HIGHEST + 1][HIGHEST + 1];
    double[] b = new double[TERMS];
    for (double[] p : points) {
      double r = (p[2] - at(from, p[0], p[1])) / cut;
      if (Math.abs(r) < 1) {
        add(p, (1 - r * r) * (1 - r * r), moments, b);
      }
    }
    double total = moments[0][0];
    if (total <= 0) {
      return from;
    }
    double[][] a = new double[TERMS][TERMS];
    for (int i = 0; i < TERMS; i++) {
      for (int j = 0; j < TERMS; j++) {
        a[i][j] = moments[POWERS[i][0] + POWERS[j][0]][POWERS[i][1] + POWERS[j][1]];
      }
      a[i][i] += (i == 0 ? 1e-9 : RIDGE) * total;
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false))
        .getSolver()
        .solve(new ArrayRealVector(b))
        .toArray();
  }

  /** Adds a weighted point to the sums of powers of u and v and to the right-hand side. */
  private static void add(double[] p, double w, double[][] moments, double[] b) {
    double u = p[0];
    double v = p[1];
    double ofU = w;
    for (int i = 0; i <= HIGHEST; i++) {
      double ofBoth = ofU;
      double[] ofV = moments[i];
      for (int j = 0; i + j <= HIGHEST; j++) {
        ofV[j] += ofBoth;
        ofBoth *= v;
      }
      ofU *= u;
    }
    double value = w * p[2];
    b[0] += value;
    b[1] += value * u;
    b[2] += value * v;
    b[3] += value * u * u;
    b[4] += value * u * v;
    b[5] += value * v * v;
  }
}
