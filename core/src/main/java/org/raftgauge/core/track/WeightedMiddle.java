// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Comparator;
import java.util.List;

/**
 * The middle of values that are known unequally well: the weighted mean of their middle half, each
 * value weighted by how much of it lies there. A smooth median.
 *
 * @param centre the middle
 * @param standardError 1.15 times that of the weighted mean, the middle half's for normal values
 */
record WeightedMiddle(double centre, double standardError) {
  private static final double LOSS = 1.15;

  /**
   * A value.
   *
   * @param value any
   * @param weight one over its variance, above 0
   */
  record Weighted(double value, double weight) {}

  /** Finds the middle of one or more values. */
  static WeightedMiddle of(List<Weighted> values) {
    return ofSorted(values.stream().sorted(Comparator.comparingDouble(Weighted::value)).toList());
  }

  /** Finds the middle of one or more values that ascend. */
  static WeightedMiddle ofSorted(List<Weighted> values) {
    double total = 0;
    for (Weighted each : values) {
      total += each.weight();
    }
    double below = 0;
    double centre = 0;
    double inner = 0;
    for (Weighted each : values) {
      double from = Math.max(below, 0.25 * total);
      double to = Math.min(below + each.weight(), 0.75 * total);
      if (to > from) {
        centre += (to - from) * each.value();
        inner += to - from;
      }
      below += each.weight();
    }
    return of(centre / inner, total);
  }

  /**
   * Makes a middle that was found elsewhere.
   *
   * @param centre the middle
   * @param totalWeight sum of the weights
   */
  static WeightedMiddle of(double centre, double totalWeight) {
    return new WeightedMiddle(centre, LOSS / Math.sqrt(totalWeight));
  }

  /** Returns the same middle farther up. */
  WeightedMiddle shifted(double by) {
    return new WeightedMiddle(centre + by, standardError);
  }
}
