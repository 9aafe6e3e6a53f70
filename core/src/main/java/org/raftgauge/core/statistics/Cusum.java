// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

/**
 * A two-sided tabular cumulative sum: {@code high' = max(0, high + x - target - slack)}, {@code
 * low' = max(0, low + target - slack - x)}.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.3.
 *
 * @param target value in control
 * @param slack k, half the shift to be found, 0 or more, in the unit of the values
 * @param high sum of what lies above, 0 or more
 * @param low sum of what lies below, 0 or more
 */
public record Cusum(double target, double slack, double high, double low) {
  /** Checks the ranges. */
  public Cusum {
    if (!(slack >= 0) || !(high >= 0) || !(low >= 0)) {
      throw new IllegalArgumentException(
          "slack, high and low must be >= 0, got " + slack + ", " + high + ", " + low);
    }
  }

  /** Returns sums of 0. */
  public static Cusum start(double target, double slack) {
    return new Cusum(target, slack, 0, 0);
  }

  /** Returns the sums after one more value. */
  public Cusum next(double x) {
    return new Cusum(
        target,
        slack,
        Math.max(0, high + x - target - slack),
        Math.max(0, low + target - slack - x));
  }

  /** Returns whether the upper sum passed the decision value h. */
  public boolean isHigh(double h) {
    return high > h;
  }

  /** Returns whether the lower sum passed the decision value h. */
  public boolean isLow(double h) {
    return low > h;
  }
}
