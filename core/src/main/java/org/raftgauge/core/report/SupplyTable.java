// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import org.raftgauge.core.forecast.SupplyRow;

/** Writes {@code supply.csv}: what each crop can supply on the coming days. */
public final class SupplyTable {
  private static final List<String> HEADER =
      List.of(
          "crop",
          "date",
          "rafts",
          "ready_rafts",
          "ready_heads",
          "ready_weight_g",
          "ready_weight_lo80_g",
          "ready_weight_hi80_g",
          "ready_weight_lo95_g",
          "ready_weight_hi95_g",
          "newly_ready_weight_g",
          "sales_weight_g",
          "packs");

  private SupplyTable() {}

  /**
   * Writes the table.
   *
   * @param rows in the order in which they are written
   * @return the text of the file
   */
  public static String of(List<SupplyRow> rows) {
    CsvText csv = new CsvText(HEADER);
    for (SupplyRow row : rows) {
      csv.text(row.crop())
          .text(row.date().toString())
          .number(row.rafts())
          .number(row.readyRafts(), 1)
          .number(row.readyHeads(), 1)
          .number(row.readyG().mean(), 0)
          .number(row.readyG().lo80(), 0)
          .number(row.readyG().hi80(), 0)
          .number(row.readyG().lo95(), 0)
          .number(row.readyG().hi95(), 0)
          .number(row.newlyReadyG(), 0)
          .number(row.salesG(), 0)
          .number(row.packs(), 0)
          .endRow();
    }
    return csv.toString();
  }
}
