// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

/**
 * Where an {@link EwmaRule} chart stands.
 *
 * @param rule the chart
 * @param target value in control
 * @param average the weighted average so far
 * @param n values taken in
 */
public record Ewma(EwmaRule rule, double target, double average, int n) {
  /** Returns the state after one more value. */
  public Ewma next(double x) {
    return new Ewma(rule, target, rule.next(average, x), n + 1);
  }

  /** Returns whether the average lies above its upper limit, for values of deviation sigma. */
  public boolean isHigh(double sigma) {
    return average > target + rule.halfWidth(n, sigma);
  }

  /** Returns whether the average lies below its lower limit, for values of deviation sigma. */
  public boolean isLow(double sigma) {
    return average < target - rule.halfWidth(n, sigma);
  }
}
