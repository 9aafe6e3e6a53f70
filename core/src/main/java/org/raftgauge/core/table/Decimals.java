// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.util.Locale;

/**
 * Writes numbers with so many decimals, fast: a large farm's tables and words have millions. By
 * whole numbers where every rule of rounding says the same; by the library's where a number lies
 * between two as near the middle as the errors of this way, 2e-7 of the last decimal.
 */
public final class Decimals {
  private static final double MOST = 1e9;
  private static final double NEAR_MIDDLE = 1e-6;
  private static final double[] POWERS = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12
  };

  private Decimals() {}

  /**
   * Writes a number for words, as {@link String#format(Locale, String, Object...)} with {@code %f}
   * does in {@link Locale#ROOT}.
   *
   * @param number any
   * @param decimals digits after the dot, 0 to 12
   * @return the text
   */
  public static String words(double number, int decimals) {
    String plain = number > 0 ? plain(number, decimals) : "";
    return plain.isEmpty() ? String.format(Locale.ROOT, "%." + decimals + "f", number) : plain;
  }

  /**
   * Writes a number where every rule of rounding says the same.
   *
   * @param number 0 or more
   * @param decimals digits after the dot, 0 to 12
   * @return the text; empty where rules may differ, or the number is large
   */
  static String plain(double number, int decimals) {
    double scaled = number * POWERS[decimals];
    if (!(scaled < MOST)) {
      return "";
    }
    long whole = (long) scaled;
    double rest = scaled - whole;
    if (Math.abs(rest - 0.5) < NEAR_MIDDLE) {
      return "";
    }
    String digits = Long.toString(rest > 0.5 ? whole + 1 : whole);
    if (decimals == 0) {
      return digits;
    }
    int missing = decimals + 1 - digits.length();
    String all = missing > 0 ? "0".repeat(missing) + digits : digits;
    int dot = all.length() - decimals;
    return all.substring(0, dot) + '.' + all.substring(dot);
  }
}
