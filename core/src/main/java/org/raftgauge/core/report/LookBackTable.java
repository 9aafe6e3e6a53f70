// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import org.raftgauge.core.forecast.LookBackRow;
import org.raftgauge.core.forecast.LookBackScore;

/** Writes {@code look-back.csv}, a forecast a row, and {@code look-back-summary.csv}. */
public final class LookBackTable {
  private static final List<String> ROWS =
      List.of(
          "raft",
          "crop",
          "evening",
          "harvested_on",
          "lead_days",
          "total_weight_g",
          "total_weight_lo80_g",
          "total_weight_hi80_g",
          "total_weight_lo95_g",
          "total_weight_hi95_g",
          "heads",
          "harvested_g",
          "harvested_heads",
          "error_share",
          "inside80",
          "inside95",
          "grader_hindsight");
  private static final List<String> SUMMARY =
      List.of(
          "crop",
          "lead_days",
          "harvests",
          "median_absolute_error_share",
          "mean_error_share",
          "inside80_fraction",
          "inside95_fraction",
          "mean_width80_share",
          "grader_hindsight");

  private LookBackTable() {}

  /**
   * Writes the forecasts.
   *
   * @param rows in the order in which they are written
   * @return the text of the file
   */
  public static String rows(List<LookBackRow> rows) {
    CsvText csv = new CsvText(ROWS);
    for (LookBackRow row : rows) {
      csv.text(row.raft())
          .text(row.crop())
          .text(row.evening().toString())
          .text(row.harvestedOn().toString())
          .number(row.leadDays())
          .number(row.weightG().mean(), 0)
          .number(row.weightG().lo80(), 0)
          .number(row.weightG().hi80(), 0)
          .number(row.weightG().lo95(), 0)
          .number(row.weightG().hi95(), 0)
          .number(row.heads(), 1)
          .number(row.harvestedG(), 0)
          .number(row.harvestedHeads())
          .number(row.errorShare(), 4)
          .flag(row.weightG().holds80(row.harvestedG()))
          .flag(row.weightG().holds95(row.harvestedG()))
          .flag(row.hindsight())
          .endRow();
    }
    return csv.toString();
  }

  /**
   * Writes the scores.
   *
   * @param scores in the order in which they are written
   * @return the text of the file
   */
  public static String summary(List<LookBackScore> scores) {
    CsvText csv = new CsvText(SUMMARY);
    for (LookBackScore s : scores) {
      csv.text(s.crop())
          .number(s.leadDays())
          .number(s.harvests())
          .number(s.medianAbsoluteShare(), 4)
          .number(s.meanShare(), 4)
          .number(s.inside80(), 3)
          .number(s.inside95(), 3)
          .number(s.width80Share(), 4)
          .number(s.hindsight())
          .endRow();
    }
    return csv.toString();
  }
}
