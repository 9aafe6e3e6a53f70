// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.CsvWriter;

/** Collects the rows of a report, cell by cell, as the text of a file ({@link CsvWriter}). */
final class CsvText {
  private final StringWriter text = new StringWriter();
  private final CsvWriter writer;
  private final List<Cell> row = new ArrayList<>();

  /**
   * Starts a file with its header.
   *
   * @param header names of the columns
   */
  CsvText(List<String> header) {
    try {
      writer = CsvWriter.to(text, header);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a text in memory can always be written to
    }
  }

  /** Adds a cell of text, made safe for spreadsheets. */
  CsvText text(String cell) {
    return add(Cell.text(cell));
  }

  /** Adds a cell of texts, separated by semicolons. */
  CsvText list(List<String> items) {
    return add(Cell.list(items));
  }

  /** Adds a time where there is one, else an empty cell. */
  CsvText time(Optional<OffsetDateTime> time) {
    return add(time.map(Cell::time).orElse(Cell.blank()));
  }

  /** Adds a number, rounded to so many decimals. */
  CsvText number(double value, int decimals) {
    return add(Cell.number(value, decimals));
  }

  /** Adds a number where there is one, else an empty cell. */
  CsvText number(OptionalDouble value, int decimals) {
    return add(Cell.number(value, decimals));
  }

  /** Adds a whole number. */
  CsvText number(int value) {
    return add(Cell.whole(value));
  }

  /** Adds {@code true} or {@code false}. */
  CsvText flag(boolean value) {
    return add(Cell.flag(value));
  }

  /** Ends the row, which must be full. */
  CsvText endRow() {
    try {
      writer.row(row);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    row.clear();
    return this;
  }

  private CsvText add(Cell cell) {
    row.add(cell);
    return this;
  }

  /** Returns the file's text. */
  @Override
  public String toString() {
    return text.toString();
  }
}
