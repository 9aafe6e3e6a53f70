// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

/** The standard normal distribution function. */
final class NormalShare {
  /** Beyond it the share under is 0 or 1 to 4e-11. */
  private static final double FAR = 6.5;

  private NormalShare() {}

  /**
   * Returns the share under {@code z}, to 7.5e-8: quick, for it is asked of every plant, day and
   * draw.
   *
   * <p>Source: Abramowitz and Stegun 1964, 26.2.17.
   */
  static double below(double z) {
    if (Math.abs(z) > FAR) {
      return z < 0 ? 0 : 1;
    }
    double t = 1 / (1 + 0.2316419 * Math.abs(z));
    double poly =
        t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    double tail = 0.3989422804014327 * Math.exp(-z * z / 2) * poly;
    return z < 0 ? tail : 1 - tail;
  }
}
