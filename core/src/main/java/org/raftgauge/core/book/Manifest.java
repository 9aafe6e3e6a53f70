// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;

/**
 * What {@code manifest.csv}, beside the photos, says of them.
 *
 * @param rows the rows by the photo's path below the manifest's folder, with forward slashes
 * @param problems what is wrong with the file
 */
public record Manifest(Map<String, ManifestRow> rows, List<Problem> problems) {
  private static final Columns COLUMNS =
      new Columns(List.of("photo"), List.of("taken_at", "station", "slot", "raft"));

  /** Copies the parts, keeping their order. */
  public Manifest {
    rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
    problems = List.copyOf(problems);
  }

  /** Returns the manifest of a folder that has none. */
  public static Manifest none() {
    return new Manifest(Map.of(), List.of());
  }

  /**
   * Reads a manifest. A time that cannot be read is a problem and stays in its row as written, so
   * that the photo is refused rather than dated by something else.
   *
   * @param file the file
   * @return its rows and problems; no rows where it cannot be read
   */
  public static Manifest read(Path file) {
    CsvTable table = CsvTable.read(file, file.getFileName().toString(), COLUMNS);
    Findings findings = new Findings();
    findings.addAll(table.problems());
    Map<String, ManifestRow> rows = new LinkedHashMap<>();
    for (CsvRow row : table.rows()) {
      row(new Cells(row, findings), rows);
    }
    return new Manifest(rows, findings.list());
  }

  /**
   * Finds names of the manifest that a book does not know.
   *
   * @param reading the book as read
   * @return a problem for each station, slot and raft of a row that is none of the book's
   */
  public List<Problem> problemsWith(BookReading reading) {
    return new ManifestNames(reading).problems(this);
  }

  private static void row(Cells cells, Map<String, ManifestRow> rows) {
    String photo = path(cells.required("photo"));
    if (!cells.sound()) {
      return;
    }
    checkTime(cells);
    List.of("station", "slot", "raft").forEach(column -> CellNames.optional(cells, column));
    ManifestRow row =
        new ManifestRow(
            cells.line(),
            photo,
            given(cells, "taken_at"),
            given(cells, "station"),
            given(cells, "slot"),
            given(cells, "raft"));
    ManifestRow earlier = rows.putIfAbsent(photo, row);
    if (earlier != null) {
      cells.error(
          "photo",
          "\"" + photo + "\" stands on line " + earlier.line() + " too, which counts",
          "keep one of the two");
    }
  }

  private static void checkTime(Cells cells) {
    String text = cells.text("taken_at");
    FarmDay anyZone = BookSettings.unread().farmDay();
    boolean bareDate = text.matches("\\d{4}-\\d{2}-\\d{2}");
    if (bareDate) {
      cells.date("taken_at");
    } else if (!text.isEmpty() && anyZone.parseTime(text).isEmpty()) {
      cells.error(
          "taken_at",
          "\"" + text + "\" is not a time",
          "write date and time, as in 2026-04-06T18:00");
    }
  }

  private static String path(String photo) {
    return photo.replace('\\', '/').replaceFirst("^(\\./)+", "");
  }

  private static Optional<String> given(Cells cells, String column) {
    return Optional.of(cells.text(column)).filter(text -> !text.isEmpty());
  }
}
