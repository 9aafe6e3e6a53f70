// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.batch.store.Remeasured;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.CsvWriter;

/** Writes how measures differ between two programs or books. */
public final class RemeasuredTable {
  private static final List<String> COLUMNS =
      List.of(
          "photo",
          "sha256",
          "raft",
          "site",
          "version_before",
          "measuring_code_before",
          "area_before_cm2",
          "area_se_before_cm2",
          "version_now",
          "measuring_code_now",
          "area_now_cm2",
          "area_se_now_cm2",
          "difference_cm2",
          "change_fraction");

  private RemeasuredTable() {}

  /**
   * Writes.
   *
   * @param sites measured by both
   * @param file the table
   * @throws IOException if it cannot be written
   */
  public static void write(List<Remeasured> sites, Path file) throws IOException {
    try (CsvWriter csv = CsvWriter.to(file, COLUMNS)) {
      for (Remeasured each : sites) {
        csv.row(
            List.of(
                Cell.text(each.photo()),
                Cell.text(each.sha256()),
                Cell.text(each.raft()),
                Cell.text(each.site()),
                Cell.text(each.before().version()),
                Cell.text(each.before().measuringCode()),
                Cell.number(each.before().areaCm2(), 2),
                Cell.number(each.before().seCm2(), 2),
                Cell.text(each.now().version()),
                Cell.text(each.now().measuringCode()),
                Cell.number(each.now().areaCm2(), 2),
                Cell.number(each.now().seCm2(), 2),
                Cell.number(difference(each), 2),
                Cell.number(each.change(), 4)));
      }
    }
  }

  private static OptionalDouble difference(Remeasured each) {
    OptionalDouble before = each.before().areaCm2();
    OptionalDouble now = each.now().areaCm2();
    return before.isPresent() && now.isPresent()
        ? OptionalDouble.of(now.getAsDouble() - before.getAsDouble())
        : OptionalDouble.empty();
  }
}
