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
    Moments moments = new Moments();
    for (double[] p : points) {
      double r = (p[2] - at(from, p[0], p[1])) / cut;
      if (Math.abs(r) < 1) {
        moments.add(p[0], p[1], p[2], (1 - r * r) * (1 - r * r));
      }
    }
    double[][] a = moments.normal();
    double total = a[0][0];
    if (total <= 0) {
      return from;
    }
    for (int i = 0; i < TERMS; i++) {
      a[i][i] += (i == 0 ? 1e-9 : RIDGE) * total;
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false))
        .getSolver()
        .solve(new ArrayRealVector(moments.right()))
        .toArray();
  }

  /** Weighted sums of products of powers: {@code uuv} is that of {@code w u u v}. */
  private static final class Moments {
    private double one;
    private double u;
    private double v;
    private double uu;
    private double uv;
    private double vv;
    private double uuu;
    private double uuv;
    private double uvv;
    private double vvv;
    private double uuuu;
    private double uuuv;
    private double uuvv;
    private double uvvv;
    private double vvvv;
    private double z;
    private double zu;
    private double zv;
    private double zuu;
    private double zuv;
    private double zvv;

    void add(double x, double y, double value, double weight) {
      double wx = weight * x;
      double wy = weight * y;
      double wxx = wx * x;
      double wxy = wx * y;
      double wyy = wy * y;
      one += weight;
      u += wx;
      v += wy;
      uu += wxx;
      uv += wxy;
      vv += wyy;
      uuu += wxx * x;
      uuv += wxx * y;
      uvv += wxy * y;
      vvv += wyy * y;
      uuuu += wxx * x * x;
      uuuv += wxx * x * y;
      uuvv += wxx * y * y;
      uvvv += wxy * y * y;
      vvvv += wyy * y * y;
      z += weight * value;
      zu += wx * value;
      zv += wy * value;
      zuu += wxx * value;
      zuv += wxy * value;
      zvv += wyy * value;
    }

    /** Returns the left side of the normal equations. */
    double[][] normal() {
      return new double[][] {
        {one, u, v, uu, uv, vv},
        {u, uu, uv, uuu, uuv, uvv},
        {v, uv, vv, uuv, uvv, vvv},
        {uu, uuu, uuv, uuuu, uuuv, uuvv},
        {uv, uuv, uvv, uuuv, uuvv, uvvv},
        {vv, uvv, vvv, uuvv, uvvv, vvvv}
      };
    }

    double[] right() {
      return new double[] {z, zu, zv, zuu, zuv, zvv};
    }
  }
}
