// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Tests whether the value furthest from the mean is an outlier of a normal sample.
 *
 * <p>Source: Grubbs 1969, Technometrics 11:1-21; NIST/SEMATECH e-Handbook 1.3.5.17.1.
 *
 * @param index which value lies furthest out
 * @param g its distance from the mean in standard deviations
 * @param critical the two-sided critical value at 5 %
 */
public record Grubbs(int index, double g, double critical) {

  /**
   * Tests.
   *
   * @param x at least 3 values, not all the same
   * @return the test
   */
  public static Grubbs test(double... x) {
    Samples.finite(x, 3);
    double mean = Samples.mean(x);
    int furthest = 0;
    for (int i = 1; i < x.length; i++) {
      if (Math.abs(x[i] - mean) > Math.abs(x[furthest] - mean)) {
        furthest = i;
      }
    }
    double g = Math.abs(x[furthest] - mean) / Samples.sd(x);
    return new Grubbs(furthest, g, critical(x.length, 0.05 / 2));
  }

  /**
   * Returns the critical value of one side.
   *
   * @param n number of values, at least 3
   * @param alpha share of samples without an outlier that may exceed it, above 0, under 0.5
   * @return distance from the mean in standard deviations
   */
  public static double critical(int n, double alpha) {
    if (n < 3) {
      throw new IllegalArgumentException("n must be >= 3, got " + n);
    }
    double t = new TDistribution(n - 2.0).inverseCumulativeProbability(1 - alpha / n);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }

  /** Says whether the value is an outlier at 5 %, two-sided. */
  public boolean outlier() {
    return g > critical;
  }
}
