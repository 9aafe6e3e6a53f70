// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.hipparchus.special.Erf;

/** The upper tail of the standard normal. */
final class NormalTail {
  private static final double LN_SQRT_2PI = 0.5 * Math.log(2 * Math.PI);

  private NormalTail() {}

  /** Returns ln P(Z > a), by the asymptotic series where the tail underflows. */
  static double logUpper(double a) {
    if (a < 30) {
      return Math.log(0.5 * Erf.erfc(a / Math.sqrt(2)));
    }
    return -0.5 * a * a - LN_SQRT_2PI - Math.log(a) + Math.log1p(-1 / (a * a));
  }

  /** Returns E(Z | Z > a). */
  static double hazard(double a) {
    return Math.exp(-0.5 * a * a - LN_SQRT_2PI - logUpper(a));
  }
}
