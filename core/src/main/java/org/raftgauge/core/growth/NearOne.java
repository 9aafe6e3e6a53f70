// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/**
 * The logarithm of what is near 1, fast: a curve's shape is worked out millions of times.
 *
 * <p>Source: Goldberg 1991, ACM Comput. Surv. 23:5-48, theorem 4: {@code x ln(1 + x) / ((1 + x) -
 * 1)} is exact to some units in the last place although {@code 1 + x} is not; and x itself where 1
 * + x is 1.
 */
final class NearOne {
  private NearOne() {}

  /** Returns {@code ln(1 + x)} for x over -1. */
  static double lnOnePlus(double x) {
    double whole = 1 + x;
    if (whole == 1 || whole == Double.POSITIVE_INFINITY) {
      return x;
    }
    return Math.log(whole) * (x / (whole - 1));
  }
}
