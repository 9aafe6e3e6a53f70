// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.Arrays;

/** Draws of an amount; never changes. Holds an array, so it is no record. */
final class Totals {
  private final double[] draws;

  private Totals(double[] draws) {
    this.draws = draws;
  }

  static Totals of(double[] draws) {
    return new Totals(draws.clone());
  }

  static Totals zero(int draws) {
    return new Totals(new double[draws]);
  }

  /** Returns the sum, draw by draw: shared errors stay shared. */
  Totals plus(Totals other) {
    double[] sum = draws.clone();
    for (int s = 0; s < sum.length; s++) {
      sum[s] += other.draws[s];
    }
    return new Totals(sum);
  }

  double get(int draw) {
    return draws[draw];
  }

  /** Returns mean and ends of intervals. */
  Amount amount() {
    double[] sorted = draws.clone();
    Arrays.sort(sorted);
    double mean = Arrays.stream(draws).average().orElse(0);
    return new Amount(
        mean,
        quantile(sorted, 0.1),
        quantile(sorted, 0.9),
        quantile(sorted, 0.025),
        quantile(sorted, 0.975));
  }

  /** Interpolates between order statistics: Hyndman and Fan 1996, type 6. */
  static double quantile(double[] sorted, double probability) {
    double at = probability * (sorted.length + 1) - 1;
    int i = (int) Math.max(0, Math.min(sorted.length - 2, Math.floor(at)));
    double part = Math.max(0, Math.min(1, at - i));
    return sorted[i] + part * (sorted[i + 1] - sorted[i]);
  }
}
