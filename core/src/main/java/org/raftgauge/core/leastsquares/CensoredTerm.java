// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import org.hipparchus.special.Erf;

/**
 * The normal likelihood of a lower bound, {@code ln Phi(z)} with {@code z = (mean - bound) / sd}.
 *
 * <p>Source: Tobin 1958, Econometrica 26:24-36 (censored regression).
 */
final class CensoredTerm {
  private static final double SQRT2 = Math.sqrt(2);
  private static final double LN_SQRT_2PI = 0.5 * Math.log(2 * Math.PI);

  private CensoredTerm() {}

  /** Returns {@code ln Phi(z)}, by the asymptotic series where Phi underflows. */
  static double logPhi(double z) {
    if (z > -30) {
      return Math.log(0.5 * Erf.erfc(-z / SQRT2));
    }
    return -0.5 * z * z - LN_SQRT_2PI - Math.log(-z) + Math.log1p(-1 / (z * z));
  }

  /** Returns {@code phi(z) / Phi(z)}, the derivative of {@link #logPhi}. */
  static double hazard(double z) {
    return hazard(z, logPhi(z));
  }

  /** Returns {@code phi(z) / Phi(z)} where {@code ln Phi(z)} is known. */
  static double hazard(double z, double logPhi) {
    return Math.exp(-0.5 * z * z - LN_SQRT_2PI - logPhi);
  }

  /** Returns the deviance residual {@code sqrt(-2 ln Phi)} by {@code ln Phi}. */
  static double deviance(double logPhi) {
    return Math.sqrt(Math.max(0, -2 * logPhi));
  }

  /** Returns the information weight {@code -(ln Phi)'' = h (h + z)}, in 0..1. */
  static double information(double z) {
    double h = hazard(z);
    return Math.max(0, h * (h + z));
  }
}
