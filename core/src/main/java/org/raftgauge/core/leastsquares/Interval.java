// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.OptionalDouble;

/**
 * An interval whose ends may be open where the data do not bound it.
 *
 * @param lo lower end, empty if not bounded
 * @param hi upper end, empty if not bounded
 */
public record Interval(OptionalDouble lo, OptionalDouble hi) {
  /** Makes an interval with both ends. */
  public static Interval of(double lo, double hi) {
    return new Interval(OptionalDouble.of(lo), OptionalDouble.of(hi));
  }

  /** Returns whether {@code value} lies in the interval, an open end counting as infinite. */
  public boolean contains(double value) {
    return value >= lo.orElse(Double.NEGATIVE_INFINITY)
        && value <= hi.orElse(Double.POSITIVE_INFINITY);
  }
}
