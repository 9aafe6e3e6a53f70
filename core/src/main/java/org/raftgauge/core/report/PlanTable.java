// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.time.LocalDate;
import java.util.List;
import org.raftgauge.core.forecast.PlanDay;
import org.raftgauge.core.forecast.PlanRow;

/** Writes {@code plan.csv}, which the grower may edit, and {@code plan-totals.csv}. */
public final class PlanTable {
  private static final List<String> PLAN = List.of("raft", "harvest_on");
  private static final List<String> TOTALS =
      List.of(
          "crop",
          "date",
          "rafts",
          "heads",
          "total_weight_g",
          "total_weight_lo80_g",
          "total_weight_hi80_g",
          "total_weight_lo95_g",
          "total_weight_hi95_g",
          "sales_weight_g",
          "packs",
          "left_over_g",
          "waiting_rafts",
          "waiting_weight_g",
          "warnings");

  private PlanTable() {}

  /**
   * Writes the plan.
   *
   * @param rows in the order in which they are written
   * @return the text of the file
   */
  public static String plan(List<PlanRow> rows) {
    CsvText csv = new CsvText(PLAN);
    rows.forEach(
        row ->
            csv.text(row.raft())
                .text(row.harvestOn().map(LocalDate::toString).orElse(""))
                .endRow());
    return csv.toString();
  }

  /**
   * Writes what a plan yields.
   *
   * @param days in the order in which they are written
   * @return the text of the file
   */
  public static String totals(List<PlanDay> days) {
    CsvText csv = new CsvText(TOTALS);
    for (PlanDay day : days) {
      csv.text(day.crop())
          .text(day.date().toString())
          .list(day.rafts())
          .number(day.heads(), 1)
          .number(day.weightG().mean(), 0)
          .number(day.weightG().lo80(), 0)
          .number(day.weightG().hi80(), 0)
          .number(day.weightG().lo95(), 0)
          .number(day.weightG().hi95(), 0)
          .number(day.salesG(), 0)
          .number(day.packs(), 0)
          .number(day.leftG(), 0)
          .list(day.waitingRafts())
          .number(day.waitingG(), 0)
          .list(day.warnings())
          .endRow();
    }
    return csv.toString();
  }
}
