// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes a CSV file row by row: RFC 4180, CRLF, UTF-8 without a byte order mark. */
public final class CsvWriter implements AutoCloseable {
  private final CSVPrinter printer;
  private final int columns;

  private CsvWriter(CSVPrinter printer, int columns) {
    this.printer = printer;
    this.columns = columns;
  }

  /**
   * Begins a file, over one that may be there, with its header.
   *
   * @param file the file
   * @param columns the column names in their fixed order, at least one, none twice
   * @return the writer, to be closed
   * @throws IOException if the file cannot be written
   */
  public static CsvWriter to(Path file, List<String> columns) throws IOException {
    return to(Files.newBufferedWriter(file, StandardCharsets.UTF_8), columns);
  }

  /**
   * Begins a text with its header.
   *
   * @param out takes the text; closed with this writer
   * @param columns the column names in their fixed order, at least one, none twice
   * @return the writer, to be closed
   * @throws IOException if {@code out} cannot be written to
   */
  public static CsvWriter to(Writer out, List<String> columns) throws IOException {
    if (columns.isEmpty() || new HashSet<>(columns).size() != columns.size()) {
      throw new IllegalArgumentException("columns must be one or more, none twice, got " + columns);
    }
    CsvWriter writer = new CsvWriter(new CSVPrinter(out, CSVFormat.RFC4180), columns.size());
    writer.row(columns.stream().map(Cell::text).toList());
    return writer;
  }

  /**
   * Writes a row.
   *
   * @param cells a cell for each column, in the order of the header
   * @throws IOException if it cannot be written
   * @throws IllegalArgumentException if there are more or fewer cells than columns
   */
  public void row(List<Cell> cells) throws IOException {
    if (cells.size() != columns) {
      throw new IllegalArgumentException(
          "a row must have " + columns + " cells, got " + cells.size());
    }
    printer.printRecord(cells.stream().map(Cell::toString).toList());
  }

  /** Ends the file. */
  @Override
  public void close() throws IOException {
    printer.close();
  }
}
