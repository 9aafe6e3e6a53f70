// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import org.raftgauge.core.forecast.Resources;

/** Writes {@code resources.csv}: grams by light and water of each pond. */
public final class ResourcesTable {
  private static final List<String> HEADER =
      List.of(
          "pond",
          "from",
          "to",
          "harvested_g",
          "light_mol",
          "harvested_g_per_mol",
          "water_l",
          "harvested_g_per_l",
          "days_with_light",
          "days_with_water");

  private ResourcesTable() {}

  /**
   * Writes the table.
   *
   * @param rows in the order in which they are written
   * @return the text of the file
   */
  public static String of(List<Resources> rows) {
    CsvText csv = new CsvText(HEADER);
    for (Resources r : rows) {
      csv.text(r.pond())
          .text(r.from().toString())
          .text(r.to().toString())
          .number(r.harvestedG(), 0)
          .number(r.lightMol(), 1)
          .number(r.gPerMol(), 2)
          .number(r.waterL(), 1)
          .number(r.gPerLitre(), 2)
          .number(r.daysWithLight())
          .number(r.daysWithWater())
          .endRow();
    }
    return csv.toString();
  }
}
