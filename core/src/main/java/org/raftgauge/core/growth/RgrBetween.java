// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Mean relative growth rate between two harvests, or two evenings, of different plants.
 *
 * <p>Difference of the means of ln size over the days between; the log of the mean would be biased
 * where the spread changes. Interval by Welch's degrees of freedom.
 *
 * <p>Source: Hoffmann and Poorter 2002, Ann. Bot. 90:37-42.
 */
public final class RgrBetween {
  private RgrBetween() {}

  /**
   * Computes the rate.
   *
   * @param lnFirst ln sizes at the first harvest, at least two
   * @param lnSecond ln sizes at the second, at least two
   * @param days days between, above 0
   * @return the rate per day with its 95 % interval
   */
  public static Estimate of(double[] lnFirst, double[] lnSecond, double days) {
    if (lnFirst.length < 2 || lnSecond.length < 2 || !(days > 0)) {
      throw new IllegalArgumentException(
          "two sizes a harvest and days > 0 are needed, got "
              + lnFirst.length
              + ", "
              + lnSecond.length
              + ", "
              + days);
    }
    double first = errorSquared(lnFirst);
    double second = errorSquared(lnSecond);
    double rate = (mean(lnSecond) - mean(lnFirst)) / days;
    double variance = first + second;
    if (variance == 0) {
      return Estimate.of(rate, 0, 0);
    }
    double freedom =
        variance
            * variance
            / (first * first / (lnFirst.length - 1) + second * second / (lnSecond.length - 1));
    double quantile = new TDistribution(freedom).inverseCumulativeProbability(0.975);
    return Estimate.of(rate, Math.sqrt(variance) / days, quantile);
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElse(0);
  }

  private static double errorSquared(double[] values) {
    double mean = mean(values);
    double sum = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return sum / (values.length - 1) / values.length;
  }
}
