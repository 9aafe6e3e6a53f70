// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.List;

/**
 * The forecast of an evening.
 *
 * @param asked evening and rule
 * @param rafts each raft's coming days, sorted by raft, crop and lot
 * @param rows of the forecast table: rafts, ponds, crops, each day
 * @param supply by crop and day
 * @param remarks what a reader must know of the whole, in words
 */
public record EveningForecast(
    Asked asked,
    List<RaftForecast> rafts,
    List<ForecastRow> rows,
    List<SupplyRow> supply,
    List<String> remarks) {
  /** What every output of weights says. */
  public static final String CAUTION =
      "Weights are estimates from pictures, not legal-for-trade weighing.";

  /** Copies the lists. */
  public EveningForecast {
    rafts = List.copyOf(rafts);
    rows = List.copyOf(rows);
    supply = List.copyOf(supply);
    remarks = List.copyOf(remarks);
  }

  /**
   * Says that a crop has no grader, as the remarks do.
   *
   * @param crop its name
   * @return what that costs, and what to do
   */
  public static String noGrader(String crop) {
    return crop
        + " has no grader: its areas are forecast, no weights and no ready days;"
        + " weigh plants (grader picks) and fit one (grader fit)";
  }

  /**
   * Returns the date of a day.
   *
   * @param day from the evening
   */
  public LocalDate date(int day) {
    return asked.evening().plusDays(day);
  }
}
