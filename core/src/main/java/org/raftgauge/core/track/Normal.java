// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import org.hipparchus.special.Erf;

/** The normal distribution. */
final class Normal {
  /** The 97.5 % point. */
  static final double Z975 = 1.959963984540054;

  private static final double SQRT2 = Math.sqrt(2);

  private Normal() {}

  /** Returns the probability of less than {@code z}. */
  static double below(double z) {
    return 0.5 * Erf.erfc(-z / SQRT2);
  }

  /** Returns the two-sided p-value of {@code z}. */
  static double twoSided(double z) {
    return Erf.erfc(Math.abs(z) / SQRT2);
  }

  /** Returns the point with a probability, 0 to 1, below it. */
  static double quantile(double probability) {
    return SQRT2 * Erf.erfInv(2 * probability - 1);
  }
}
