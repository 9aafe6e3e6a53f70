// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.HashMap;
import java.util.Map;

/**
 * How much the plants of an evening err alike: the correlation of their innovations. Weather moves
 * all plants at once, and so does a model that does not quite fit; a hundred plants then do not
 * tell a hundred times as much about the cohort's curve as one.
 *
 * <p>Source: Kish 1965, Survey Sampling, section 5.4 (design effect {@code 1 + (n - 1) rho}).
 */
final class CommonShare {
  private static final class Evening {
    private double sum;
    private double squares;
    private int n;
  }

  /** Evenings over the span of days. */
  private static final int BINS = 60;

  private final double width;
  private final Map<Long, Evening> evenings = new HashMap<>();

  CommonShare(double spanDays) {
    this.width = Math.max(spanDays / BINS, 1e-9);
  }

  void add(double dat, double z) {
    Evening evening = evenings.computeIfAbsent((long) Math.floor(dat / width), k -> new Evening());
    evening.sum += z;
    evening.squares += z * z;
    evening.n++;
  }

  /** Returns by what factor the plants tell less than if they erred alone; at least 1. */
  double designEffect(double plants) {
    double pairs = 0;
    double together = 0;
    double squares = 0;
    double count = 0;
    for (Evening evening : evenings.values()) {
      together += evening.sum * evening.sum - evening.squares;
      pairs += evening.n * (evening.n - 1.0);
      squares += evening.squares;
      count += evening.n;
    }
    if (pairs == 0 || squares == 0) {
      return 1;
    }
    double correlation = Math.max(0, Math.min(1, together / pairs / (squares / count)));
    return 1 + Math.max(0, plants - 1) * correlation;
  }
}
