// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

/**
 * How is forecast.
 *
 * @param days coming days in the tables, 1 to 60
 * @param draws of the shared errors, at least 100
 * @param seed of the draws; the same seed gives the same forecast
 * @param weatherSd standard deviation of one day's growth of ln area by which all plants depart
 *     from their curves together, before the cohort's own photos tell, 0 to 0.2
 */
public record ForecastRule(int days, int draws, long seed, double weatherSd) {
  /** Days that ready days are looked for, where the tables are shorter. */
  private static final int READY_DAYS = 28;

  /** Checks the ranges. */
  public ForecastRule {
    if (days < 1 || days > 60 || draws < 100 || !(weatherSd >= 0 && weatherSd <= 0.2)) {
      throw new IllegalArgumentException(
          "forecast rule out of range: days %d (1 to 60), draws %d (>= 100), weather %s (0 to 0.2)"
              .formatted(days, draws, weatherSd));
    }
  }

  /**
   * Returns the usual rule: 14 days, 400 draws; weather 1.5 % a day is a working value, from daily
   * light that varies by a third and growth that follows it in part.
   */
  public static ForecastRule defaults() {
    return new ForecastRule(14, 400, 20260406, 0.015);
  }

  /**
   * Returns the same rule for other days.
   *
   * @param other coming days, 1 to 60
   * @return the rule
   */
  public ForecastRule withDays(int other) {
    return new ForecastRule(other, draws, seed, weatherSd);
  }

  /** Returns how many days are computed, so that ready days are found. */
  int horizon() {
    return Math.max(days, READY_DAYS);
  }
}
