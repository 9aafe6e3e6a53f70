// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Builds the text of a CSV file: RFC 4180 with CRLF, cells quoted only where they must be.
 *
 * <p>A cell of text that a spreadsheet would take for a formula (it starts with {@code = + - @},
 * tab or carriage return) gets a leading apostrophe. Numbers are never touched.
 */
final class CsvText {
  private final StringBuilder text = new StringBuilder();
  private final int columns;
  private int cells;

  /**
   * Starts a file with its header.
   *
   * @param header names of the columns
   */
  CsvText(List<String> header) {
    columns = header.size();
    header.forEach(this::text);
    endRow();
  }

  /** Adds a cell of text, made safe for spreadsheets. */
  CsvText text(String cell) {
    boolean formula = !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0;
    return raw(formula ? "'" + cell : cell);
  }

  /**
   * Adds a number, rounded half up.
   *
   * @param value finite
   * @param decimals digits after the dot, at least 0
   */
  CsvText number(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return raw(rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString());
  }

  /** Adds a number where there is one, else an empty cell. */
  CsvText number(OptionalDouble value, int decimals) {
    return value.isPresent() ? number(value.getAsDouble(), decimals) : raw("");
  }

  /** Adds a whole number. */
  CsvText number(int value) {
    return raw(Integer.toString(value));
  }

  /** Adds {@code true} or {@code false}. */
  CsvText flag(boolean value) {
    return raw(Boolean.toString(value));
  }

  /** Ends the row, which must be full. */
  CsvText endRow() {
    if (cells != columns) {
      throw new IllegalStateException("row has " + cells + " cells, header has " + columns);
    }
    cells = 0;
    text.append("\r\n");
    return this;
  }

  private CsvText raw(String cell) {
    if (cells++ > 0) {
      text.append(',');
    }
    boolean quoted = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
    text.append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
    return this;
  }

  /** Returns the file's text. */
  @Override
  public String toString() {
    return text.toString();
  }
}
