// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

/**
 * A distribution of sizes by its skewness L, median M and spread S: {@code z = ((y/M)^L - 1) / (L
 * S)}, and {@code ln(y/M) / S} at L = 0.
 *
 * <p>Source: Cole and Green 1992, Stat. Med. 11:1305-1319. Beyond |z| = 3 it is an extrapolation.
 *
 * @param l power that makes sizes normal; 0 for the logarithm
 * @param m median, above 0
 * @param s coefficient of variation after the power, above 0
 */
public record Lms(double l, double m, double s) {
  /** Checks the ranges. */
  public Lms {
    if (!(m > 0) || !(s > 0) || !Double.isFinite(l)) {
      throw new IllegalArgumentException(
          "l must be finite, m and s > 0, got " + l + ", " + m + ", " + s);
    }
  }

  /** Returns how many deviations a size is off the median; {@code y} is above 0. */
  public double z(double y) {
    return l == 0 ? Math.log(y / m) / s : Math.expm1(l * Math.log(y / m)) / (l * s);
  }

  /**
   * Returns the size at {@code z} deviations.
   *
   * @throws IllegalArgumentException where the distribution has no such size, {@code 1 + L S z <=
   *     0}
   */
  public double size(double z) {
    if (l == 0) {
      return m * Math.exp(s * z);
    }
    double base = 1 + l * s * z;
    if (!(base > 0)) {
      throw new IllegalArgumentException("1 + l s z must be > 0, got " + base);
    }
    return m * Math.pow(base, 1 / l);
  }
}
