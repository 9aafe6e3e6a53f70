// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Adds up departures from a target in both directions, so that a small lasting shift shows.
 *
 * <p>Source: NIST/SEMATECH e-Handbook 6.3.2.3, tabular form: {@code hi = max(0, hi + x - target -
 * k)}, {@code lo = max(0, lo + target - k - x)}.
 *
 * @param hi the upper sum after each value
 * @param lo the lower sum after each value
 * @param limit the decision limit
 */
public record Cusum(List<Double> hi, List<Double> lo, double limit) {

  /** Copies the lists. */
  public Cusum {
    hi = List.copyOf(hi);
    lo = List.copyOf(lo);
  }

  /**
   * Limits of a chart.
   *
   * @param target what is expected
   * @param slack k: departures up to this are not added up, at least 0
   * @param limit h: a sum over this is a signal, above 0
   */
  public record Rule(double target, double slack, double limit) {

    /**
     * Returns the usual rule for values in standard deviations from their expectation: k 0.5, h 5,
     * a mean run of 465 values without cause (Montgomery, "Introduction to Statistical Quality
     * Control").
     */
    public static Rule standard() {
      return new Rule(0, 0.5, 5);
    }
  }

  /**
   * Adds up.
   *
   * @param x values in their order in time
   * @param rule target and limits
   * @return the chart
   */
  public static Cusum of(double[] x, Rule rule) {
    List<Double> hi = new ArrayList<>();
    List<Double> lo = new ArrayList<>();
    double up = 0;
    double down = 0;
    for (double value : x) {
      up = Math.max(0, up + value - rule.target() - rule.slack());
      down = Math.max(0, down + rule.target() - rule.slack() - value);
      hi.add(up);
      lo.add(down);
    }
    return new Cusum(hi, lo, rule.limit());
  }

  /** Returns the index of the first value at which a sum passes the limit, if one does. */
  public OptionalInt firstSignal() {
    for (int i = 0; i < hi.size(); i++) {
      if (hi.get(i) > limit || lo.get(i) > limit) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }
}
