// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;

/** Reads the rows of one CSV text, once. */
final class CsvReader {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).get();

  /**
   * So many required columns may be misspelt; a file that lacks more, or lacks one and has mostly
   * columns that are near none it may have, is another one.
   */
  private static final int FEW = 2;

  private final String name;
  private final Columns columns;
  private final Findings findings;
  private final Map<List<String>, Integer> lineOfRow = new HashMap<>();
  private final List<String> stray = new ArrayList<>();
  private boolean whole = true;

  CsvReader(String name, Columns columns, Findings findings) {
    this.name = name;
    this.columns = columns;
    this.findings = findings;
  }

  private record Line(int number, List<String> cells) {
    boolean isBlank() {
      return cells.stream().allMatch(String::isEmpty);
    }

    /** Spreadsheets begin a header's words with capitals of their own accord. */
    Line inSmallLetters() {
      return new Line(number, cells.stream().map(c -> c.toLowerCase(Locale.ROOT)).toList());
    }
  }

  /** Returns the rows so far that could not be told into cells. */
  List<String> stray() {
    return stray;
  }

  /** Says whether header and quotes let every row be read, if not be told into cells. */
  boolean isWhole() {
    return whole;
  }

  List<CsvRow> rows(String text) {
    List<Line> lines = lines(text);
    if (lines.isEmpty()) {
      findings.error(
          name, "the file is empty", "begin it with the header " + String.join(",", columns.all()));
      whole = false;
      return List.of();
    }
    Line header = lines.get(0).inSmallLetters();
    if (!headerIsUsable(header)) {
      whole = false;
      return List.of();
    }
    List<CsvRow> rows = new ArrayList<>();
    for (Line line : lines.subList(1, lines.size())) {
      addRow(header.cells(), line, rows);
    }
    return rows;
  }

  /** Splits the text; a quote out of place ends it there, since no later cell can be trusted. */
  private List<Line> lines(String text) {
    List<Line> lines = new ArrayList<>();
    int start = 1;
    try (CSVParser parser = FORMAT.parse(new StringReader(text))) {
      Iterator<CSVRecord> records = parser.iterator();
      while (records.hasNext()) {
        Line line = new Line(start, records.next().stream().map(CsvReader::cell).toList());
        if (!line.isBlank()) {
          lines.add(line);
        }
        start = (int) parser.getCurrentLineNumber() + 1;
      }
    } catch (UncheckedIOException | IOException badQuote) {
      whole = false;
      findings.error(
          name + ":" + start,
          "a double quote is out of place in the row that begins here",
          "close it, and write a quote inside a quoted cell twice");
    }
    return lines;
  }

  /** Strips spaces and the apostrophe that {@link Cell} puts before what looks like a formula. */
  private static String cell(String raw) {
    return Cell.unguarded(raw.strip());
  }

  private boolean headerIsUsable(Line header) {
    if (hasOtherSeparator(header)) {
      return false;
    }
    int errorsBefore = findings.errors();
    String place = name + ":" + header.number();
    Set<String> seen = new HashSet<>();
    for (String column : header.cells()) {
      if (!column.isEmpty() && !seen.add(column)) {
        findings.error(
            place + ": column " + column, "the column stands twice", "keep one of the two");
      }
    }
    List<String> unused = columns.all().stream().filter(c -> !seen.contains(c)).toList();
    List<String> missing = columns.required().stream().filter(unused::contains).toList();
    List<String> unknown = seen.stream().filter(c -> !columns.all().contains(c)).sorted().toList();
    long strange = unknown.stream().filter(c -> NearestSpelling.of(c, unused).isEmpty()).count();
    boolean mostStrange = !missing.isEmpty() && 2 * strange > header.cells().size();
    if (missing.size() > FEW || mostStrange) {
      findings.error(
          place,
          (missing.size() == 1 ? "the column " : "the columns ")
              + String.join(", ", missing)
              + (missing.size() == 1 ? " is" : " are")
              + " missing: it seems to be another table",
          "give the right file, or add them; the header is " + String.join(",", columns.all()));
      return false;
    }
    unknown(place, unknown, unused);
    missing.forEach(
        column ->
            findings.error(
                place + ": column " + column,
                "the column is missing",
                "add it; the header is " + String.join(",", columns.all())));
    return findings.errors() == errorsBefore;
  }

  private void unknown(String place, List<String> names, List<String> unused) {
    for (String column : names) {
      findings.warning(
          place + ": column " + column,
          "the column is unknown and is not read",
          NearestSpelling.remedy(column, unused.isEmpty() ? columns.all() : unused));
    }
  }

  private boolean hasOtherSeparator(Line header) {
    String first = header.cells().get(0);
    for (String separator : List.of(";", "\t", "|")) {
      int at = first.indexOf(separator);
      if (at > 0 && columns.all().contains(first.substring(0, at).strip())) {
        String shown = separator.equals("\t") ? "tabs" : "\"" + separator + "\"";
        findings.error(
            name + ":" + header.number(),
            "cells are separated by " + shown,
            "save it with commas between the cells and dots in the numbers");
        return true;
      }
    }
    return false;
  }

  private void addRow(List<String> header, Line line, List<CsvRow> rows) {
    List<String> cells = withoutBlankTail(line.cells(), header.size());
    String place = name + ":" + line.number();
    if (cells.size() != header.size()) {
      stray.add(String.join(",", cells));
      findings.error(
          place,
          "the row has " + cells.size() + " cells, the header " + header.size(),
          "give each column its cell; put text that holds a comma in double quotes, and write a"
              + " dot in numbers, as in 12.5");
      return;
    }
    Integer earlier = lineOfRow.putIfAbsent(cells, line.number());
    if (earlier != null) {
      findings.error(place, "the row is the same as line " + earlier, "delete one of the two");
      return;
    }
    Map<String, String> byColumn = new HashMap<>();
    for (int i = 0; i < header.size(); i++) {
      byColumn.put(header.get(i), cells.get(i));
    }
    rows.add(new CsvRow(name, line.number(), byColumn));
  }

  private static List<String> withoutBlankTail(List<String> cells, int size) {
    int end = cells.size();
    while (end > size && cells.get(end - 1).isEmpty()) {
      end--;
    }
    return cells.subList(0, end);
  }
}
