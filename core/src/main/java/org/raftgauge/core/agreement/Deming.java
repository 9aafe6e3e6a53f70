// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

/**
 * The line through points with error in both variables, of known ratio.
 *
 * <p>Source: Deming 1943, "Statistical Adjustment of Data"; standard errors by the jackknife
 * (Linnet 1990, Statistics in Medicine 9:1463-1473).
 */
public final class Deming {

  private Deming() {}

  /**
   * Fits.
   *
   * @param x values by one way, at least 4
   * @param y values by the other
   * @param varianceRatio error variance of y over that of x, above 0; 1 is orthogonal regression
   * @return the line
   */
  public static Line fit(double[] x, double[] y, double varianceRatio) {
    Samples.pairs(x, y, 4);
    if (!(varianceRatio > 0)) {
      throw new IllegalArgumentException("varianceRatio must be > 0, got " + varianceRatio);
    }
    int n = x.length;
    double slope = slope(x, y, varianceRatio);
    double intercept = intercept(x, y, slope);
    double[] slopes = new double[n];
    double[] intercepts = new double[n];
    for (int i = 0; i < n; i++) {
      double[] xs = Samples.without(x, i);
      double[] ys = Samples.without(y, i);
      double left = slope(xs, ys, varianceRatio);
      slopes[i] = n * slope - (n - 1) * left;
      intercepts[i] = n * intercept - (n - 1) * intercept(xs, ys, left);
    }
    double root = Math.sqrt(n);
    return new Line(slope, intercept, Samples.sd(slopes) / root, Samples.sd(intercepts) / root);
  }

  private static double slope(double[] x, double[] y, double ratio) {
    double xx = Samples.cross(x, x);
    double yy = Samples.cross(y, y);
    double xy = Samples.cross(x, y);
    double half = yy - ratio * xx;
    return (half + Math.sqrt(half * half + 4 * ratio * xy * xy)) / (2 * xy);
  }

  private static double intercept(double[] x, double[] y, double slope) {
    return Samples.mean(y) - slope * Samples.mean(x);
  }
}
