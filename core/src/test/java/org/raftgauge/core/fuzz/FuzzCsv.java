// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;
import org.raftgauge.core.table.CsvWriter;
import org.raftgauge.core.table.DateText;

/** A table of any text: read, and what was read written and read again. */
public final class FuzzCsv {
  private static final List<String> NAMES = List.of("raft", "site", "day", "note");
  private static final Columns COLUMNS = new Columns(List.of("raft"), NAMES.subList(1, 4));

  private static final FarmDay ANY = new FarmDay(ZoneId.of("UTC"), LocalTime.of(4, 0));

  private FuzzCsv() {}

  /** Reads a table. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    CsvTable table = CsvTable.parse(new String(bytes, StandardCharsets.UTF_8), "t.csv", COLUMNS);
    Check.problems(table.problems());
    for (CsvRow row : table.rows()) {
      Findings findings = new Findings();
      DateText.read(row.place("day"), row.text("day"), findings);
      Check.problems(findings.list());
      ANY.parseTime(row.text("day"));
    }
    if (!table.rows().isEmpty()) {
      Check.hold(cells(table).equals(cells(again(table))), "a table changed by writing it");
    }
  }

  private static List<List<String>> cells(CsvTable table) {
    List<List<String>> rows = new ArrayList<>();
    table.rows().forEach(row -> rows.add(NAMES.stream().map(row::text).toList()));
    // What is blank or the same but for unknown columns is blank or the same once written.
    return rows.stream().distinct().filter(r -> r.stream().anyMatch(c -> !c.isEmpty())).toList();
  }

  private static CsvTable again(CsvTable table) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.to(text, NAMES)) {
      for (List<String> row : cells(table)) {
        writer.row(row.stream().map(Cell::text).toList());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return CsvTable.parse(text.toString(), "t.csv", COLUMNS);
  }
}
