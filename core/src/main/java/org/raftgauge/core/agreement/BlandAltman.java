// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Limits of agreement of two ways of measuring the same things.
 *
 * <p>Source: Bland and Altman 1986, Lancet i:307-310. Limits are mean plus or minus 1.96 standard
 * deviations (the paper rounds to 2); standard error of a limit {@code sqrt(3 s^2 / n)}.
 *
 * @param n number of pairs
 * @param bias mean difference, first minus second
 * @param sd standard deviation of the differences
 * @param biasLo95 lower end of the 95 % interval of the bias
 * @param biasHi95 upper end
 * @param lower lower limit of agreement
 * @param upper upper limit of agreement
 * @param limitSe standard error of a limit
 * @param trend slope of the differences on the means of the pairs; away from 0 the bias grows with
 *     size
 * @param trendP two-sided p-value of the trend
 */
public record BlandAltman(
    int n,
    double bias,
    double sd,
    double biasLo95,
    double biasHi95,
    double lower,
    double upper,
    double limitSe,
    double trend,
    double trendP) {
  private static final double WIDE = 1.96;

  /**
   * Compares.
   *
   * @param first values by one way, at least 3
   * @param second values of the same things by the other
   * @return the agreement
   */
  public static BlandAltman of(double[] first, double[] second) {
    Samples.pairs(first, second, 3);
    double[] d = Samples.minus(first, second);
    int n = d.length;
    double bias = Samples.mean(d);
    double sd = Samples.sd(d);
    double reach = new TDistribution(n - 1).inverseCumulativeProbability(0.975) * sd / Math.sqrt(n);
    double[][] design = new double[n][];
    for (int i = 0; i < n; i++) {
      design[i] = new double[] {1, (first[i] + second[i]) / 2};
    }
    LinearFit line = LinearFit.of(design, d);
    double t = line.coefficients()[1] / line.standardErrors()[1];
    double p =
        line.residualSd() == 0
            ? 1
            : 2 * new TDistribution(n - 2).cumulativeProbability(-Math.abs(t));
    return new BlandAltman(
        n,
        bias,
        sd,
        bias - reach,
        bias + reach,
        bias - WIDE * sd,
        bias + WIDE * sd,
        Math.sqrt(3 * sd * sd / n),
        line.coefficients()[1],
        p);
  }

  /**
   * Returns the repeatability coefficient of one method measured twice, {@code 2 sqrt(mean(d^2))}.
   *
   * @param once values, at least 3
   * @param again the same measured again
   * @return in the values' unit
   */
  public static double repeatability(double[] once, double[] again) {
    Samples.pairs(once, again, 3);
    double[] d = Samples.minus(once, again);
    return 2 * Math.sqrt(LinearFit.dot(d, d) / d.length);
  }
}
