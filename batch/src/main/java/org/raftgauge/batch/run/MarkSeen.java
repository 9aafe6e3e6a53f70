// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.CsvWriter;

/** Adds rows to the book's {@code seen.csv}; what stands in it already stays byte for byte. */
public final class MarkSeen {
  private static final String FILE = "seen.csv";
  private static final List<String> COLUMNS = List.of("item", "until", "by", "note", "seen_on");

  private MarkSeen() {}

  /**
   * What is said of worklist rows.
   *
   * @param items the rows' names
   * @param until the first day on which they may show again; for good where absent
   * @param by who, may be empty
   * @param note may be empty
   * @param seenOn the farm's day on which it is said
   */
  public record Say(
      List<String> items, Optional<LocalDate> until, String by, String note, LocalDate seenOn) {

    /** Copies the list. */
    public Say {
      items = List.copyOf(items);
    }
  }

  /**
   * Adds a row for each item. The file is written beside its place and moved there, so that it is
   * never half written. A file without a column {@code seen_on} is left without: its rows hold for
   * every evening.
   *
   * @param book the book's folder
   * @param say what is said
   * @return the number of the first new line
   * @throws InputException if the file's header lacks a column that is needed, or a row stands
   *     there already
   * @throws IOException if it cannot be written
   */
  public static int add(Path book, Say say) throws InputException, IOException {
    Path file = book.resolve(FILE);
    String before = Files.exists(file) ? Files.readString(file) : "";
    String bare = before.startsWith("\uFEFF") ? before.substring(1) : before;
    List<String> columns = bare.isBlank() ? COLUMNS : header(bare, say);
    String rows = rows(columns, say);
    refuseTwice(bare, rows);
    String head = rows.substring(0, rows.indexOf('\n') + 1);
    String end = before.isEmpty() || before.endsWith("\n") ? "" : "\r\n";
    String whole = bare.isBlank() ? rows : before + end + rows.substring(head.length());
    Path draft = Files.createTempFile(book, ".seen-", ".csv");
    try {
      Files.writeString(draft, whole, StandardCharsets.UTF_8);
      Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(draft);
    }
    return (int) whole.lines().count() - say.items().size() + 1;
  }

  /** Refuses a row that stands in the file already: the book would complain of it ever after. */
  private static void refuseTwice(String before, String rows) throws InputException {
    List<String> lines = before.lines().toList();
    for (String row : rows.lines().skip(1).toList()) {
      int at = lines.indexOf(row);
      if (at >= 0) {
        throw new InputException(
            List.of(
                new Problem(
                    FILE + ":" + (at + 1),
                    "says the same already, nothing was added",
                    "delete that line to show the row again")));
      }
    }
  }

  private static List<String> header(String text, Say say) throws InputException {
    String first = text.lines().filter(l -> !l.startsWith("#")).findFirst().orElse("");
    List<String> columns =
        Arrays.stream(first.split(",", -1))
            .map(c -> c.strip().replace("\"", "").toLowerCase(Locale.ROOT))
            .toList();
    List<String> needed = new ArrayList<>(List.of("item"));
    if (say.until().isPresent()) {
      needed.add("until");
    }
    if (!say.by().isEmpty()) {
      needed.add("by");
    }
    if (!say.note().isEmpty()) {
      needed.add("note");
    }
    for (String column : needed) {
      if (!columns.contains(column)) {
        throw new InputException(
            List.of(
                new Problem(
                    FILE + ":1",
                    "there is no column \"" + column + "\"",
                    "write the header as item,until,by,note, with commas")));
      }
    }
    return columns;
  }

  private static String rows(List<String> columns, Say say) throws IOException {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.to(text, columns)) {
      for (String item : say.items()) {
        List<Cell> cells = new ArrayList<>();
        for (String column : columns) {
          cells.add(Cell.text(cell(column, item, say)));
        }
        writer.row(cells);
      }
    }
    return text.toString();
  }

  private static String cell(String column, String item, Say say) {
    return switch (column) {
      case "item" -> item;
      case "until" -> say.until().map(LocalDate::toString).orElse("");
      case "by" -> say.by();
      case "note" -> say.note();
      case "seen_on" -> say.seenOn().toString();
      default -> "";
    };
  }
}
