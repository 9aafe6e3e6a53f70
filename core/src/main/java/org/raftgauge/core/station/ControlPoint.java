// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

/**
 * A value on a control chart.
 *
 * @param value the value
 * @param level the recent past's median; the value itself while learning
 * @param spread the recent past's standard deviation, widened for few values; 0 while learning
 * @param state what is said of it
 */
public record ControlPoint(double value, double level, double spread, State state) {

  /** What is said of a value. */
  public enum State {
    /** Too little past to say anything. */
    LEARNING,
    /** As it was. */
    IN_CONTROL,
    /** Higher than chance allows. */
    HIGH,
    /** Lower than chance allows. */
    LOW;

    /** Says whether it is out of control. */
    public boolean out() {
      return this == HIGH || this == LOW;
    }
  }

  /**
   * Says whether it is so far out that it need not be seen twice.
   *
   * @param rule by which it is out
   * @return whether it is over twice the limit of a single point
   */
  public boolean isFar(ControlRule rule) {
    return Math.abs(value - level) > 2 * rule.pointLimit() * spread;
  }
}
