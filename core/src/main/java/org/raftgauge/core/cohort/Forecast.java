// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

/**
 * A normal prediction.
 *
 * @param mean expected value
 * @param sd its standard deviation, 0 or more
 */
public record Forecast(double mean, double sd) {
  /** Returns the 95 % interval's lower end. */
  public double lo95() {
    return mean - 1.959963984540054 * sd;
  }

  /** Returns the 95 % interval's upper end. */
  public double hi95() {
    return mean + 1.959963984540054 * sd;
  }
}
