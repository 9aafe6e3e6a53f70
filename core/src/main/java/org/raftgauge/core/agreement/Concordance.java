// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

/**
 * How closely pairs lie to the line of equality.
 *
 * <p>Source: Lin 1989, Biometrics 45:255-268: {@code 2 s_xy / (s_x^2 + s_y^2 + (mean x - mean
 * y)^2)} with variances over n, interval by Fisher's z transform with Lin's variance (as corrected
 * in Biometrics 56:324-325).
 *
 * @param coefficient concordance, -1..1; 1 is full agreement
 * @param correlation Pearson's r
 * @param bias bias correction factor, coefficient over correlation, 0..1
 * @param lo95 lower end of the 95 % interval
 * @param hi95 upper end
 */
public record Concordance(
    double coefficient, double correlation, double bias, double lo95, double hi95) {
  private static final double Z = 1.959963984540054;

  /**
   * Compares.
   *
   * @param x values by one way, at least 4, not all the same
   * @param y values by the other, not all the same
   * @return the concordance
   */
  public static Concordance of(double[] x, double[] y) {
    Samples.pairs(x, y, 4);
    int n = x.length;
    double xx = Samples.cross(x, x) / n;
    double yy = Samples.cross(y, y) / n;
    double xy = Samples.cross(x, y) / n;
    double shift = Samples.mean(x) - Samples.mean(y);
    double c = 2 * xy / (xx + yy + shift * shift);
    double r = xy / Math.sqrt(xx * yy);
    double u2 = shift * shift / Math.sqrt(xx * yy);
    double variance =
        ((1 - r * r) * c * c / ((1 - c * c) * r * r)
                + 2 * c * c * c * (1 - c) * u2 / (r * (1 - c * c) * (1 - c * c))
                - c * c * c * c * u2 * u2 / (2 * r * r * (1 - c * c) * (1 - c * c)))
            / (n - 2);
    double z = 0.5 * Math.log((1 + c) / (1 - c));
    double reach = Z * Math.sqrt(variance);
    return new Concordance(c, r, c / r, Math.tanh(z - reach), Math.tanh(z + reach));
  }
}
