// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.grader.PickSites;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.CsvWriter;

/** Writes the sites to weigh as CSV, with blank columns for the scale. */
final class PicksTable {
  private static final List<String> COLUMNS =
      List.of(
          "raft",
          "site",
          "pond",
          "berth",
          "crop",
          "variety",
          "closed",
          "area_cm2",
          "predicted_weight_g",
          "part",
          "parts",
          "weighed_at",
          "fresh_weight_g",
          "top_height_mm",
          "state");

  private PicksTable() {}

  static void write(Path file, List<PickBook.Chosen> chosen) throws IOException {
    try (CsvWriter csv = CsvWriter.to(file, COLUMNS)) {
      for (PickBook.Chosen one : chosen) {
        PickSites.Candidate site = one.pick().candidate();
        OptionalDouble weight =
            one.weightG().isPresent()
                ? OptionalDouble.of(one.weightG().get().medianG())
                : OptionalDouble.empty();
        csv.row(
            List.of(
                Cell.text(site.raft()),
                Cell.text(site.site().toString()),
                Cell.text(one.planting().pond()),
                Cell.text(one.planting().berth()),
                Cell.text(one.planting().crop()),
                Cell.text(one.planting().variety()),
                Cell.flag(site.regime() == Regime.CLOSED),
                Cell.number(one.areaCm2(), 1),
                Cell.number(weight, 0),
                Cell.whole(one.pick().part()),
                Cell.whole(one.pick().parts()),
                Cell.blank(),
                Cell.blank(),
                Cell.blank(),
                Cell.blank()));
      }
    }
  }
}
