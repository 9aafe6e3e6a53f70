// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.forecast.Amount;
import org.raftgauge.core.forecast.ForecastRow;

/**
 * Writes {@code forecast.csv}: each raft, pond and crop on the coming days.
 *
 * <p>{@code total_area_cm2} is the sum of the plants' areas by their curves, each whole as if none
 * were covered; weights are empty where no grader tells them.
 */
public final class ForecastTable {
  private static final List<String> HEADER =
      List.of(
          "scope",
          "raft",
          "pond",
          "crop",
          "lot",
          "date",
          "dat",
          "heads",
          "heads_under_minimum",
          "total_weight_g",
          "total_weight_lo80_g",
          "total_weight_hi80_g",
          "total_weight_lo95_g",
          "total_weight_hi95_g",
          "ready_on",
          "ready_on_lo80",
          "ready_on_hi80",
          "grader",
          "regime",
          "total_area_cm2",
          "total_area_lo80_cm2",
          "total_area_hi80_cm2",
          "sales_weight_g",
          "packs",
          "cut_before_g",
          "warnings");

  private ForecastTable() {}

  /**
   * Writes the table.
   *
   * @param rows in the order in which they are written
   * @return the text of the file
   */
  public static String of(List<ForecastRow> rows) {
    CsvText csv = new CsvText(HEADER);
    rows.forEach(row -> row(csv, row));
    return csv.toString();
  }

  private static void row(CsvText csv, ForecastRow row) {
    csv.text(row.scope())
        .text(row.place().raft())
        .text(row.place().pond())
        .text(row.place().crop())
        .text(row.place().lot())
        .text(row.date().toString())
        .number(row.dat(), 3)
        .number(row.heads(), 1)
        .number(row.headsUnder(), 1);
    amount(csv, row.weightG());
    day(csv, row.ready().on());
    day(csv, row.ready().lo80());
    day(csv, row.ready().hi80());
    csv.text(row.told().grader())
        .text(row.told().regime())
        .number(row.areaCm2().mean(), 1)
        .number(row.areaCm2().lo80(), 1)
        .number(row.areaCm2().hi80(), 1);
    Optional<ForecastRow.Sales> sales = row.sales();
    if (sales.isPresent()) {
      csv.number(sales.get().weightG(), 0)
          .number(sales.get().packs(), 0)
          .number(sales.get().cutBeforeG(), 0);
    } else {
      csv.text("").text("").text("");
    }
    csv.list(row.warnings()).endRow();
  }

  private static void amount(CsvText csv, Optional<Amount> amount) {
    if (amount.isEmpty()) {
      csv.text("").text("").text("").text("").text("");
      return;
    }
    Amount a = amount.get();
    csv.number(a.mean(), 0)
        .number(a.lo80(), 0)
        .number(a.hi80(), 0)
        .number(a.lo95(), 0)
        .number(a.hi95(), 0);
  }

  private static void day(CsvText csv, Optional<LocalDate> day) {
    csv.text(day.map(LocalDate::toString).orElse(""));
  }
}
