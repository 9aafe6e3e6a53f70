// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * A cell ready to be written: text that no spreadsheet takes for a formula, or a number.
 *
 * <p>Text that starts with {@code = + - @}, a tab or a carriage return, behind apostrophes or none,
 * gets an apostrophe before it, which {@link CsvTable} and {@link CsvScan} take off again. Numbers
 * keep their minus sign.
 */
public final class Cell {
  private static final Cell BLANK = new Cell("");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssxxx", java.util.Locale.ROOT);

  private final String text;

  private Cell(String text) {
    this.text = text;
  }

  /** Returns a cell with nothing in it. */
  public static Cell blank() {
    return BLANK;
  }

  /**
   * Makes a cell of text.
   *
   * @param text any text
   * @return the cell
   */
  public static Cell text(String text) {
    return new Cell(looksLikeFormula(text, 0) ? "'" + text : text);
  }

  /**
   * Makes a cell of several texts, separated by {@code ;}.
   *
   * @param items texts in order; a {@code ;} inside one is written as a comma
   * @return the cell
   */
  public static Cell list(Collection<String> items) {
    return text(
        items.stream().map(item -> item.replace(';', ',')).collect(Collectors.joining(";")));
  }

  /**
   * Makes a cell of a whole number.
   *
   * @param number any
   * @return the cell
   */
  public static Cell whole(long number) {
    return new Cell(Long.toString(number));
  }

  /**
   * Makes a cell of a number rounded half to even; what rounds to zero carries no minus sign.
   *
   * @param number finite
   * @param decimals digits after the dot, 0 to 12
   * @return the cell
   * @throws IllegalArgumentException if the number is not finite or the decimals are out of range
   */
  public static Cell number(double number, int decimals) {
    if (!Double.isFinite(number) || decimals < 0 || decimals > 12) {
      throw new IllegalArgumentException(
          "number must be finite and decimals 0 to 12, got " + number + " and " + decimals);
    }
    String plain = number >= 0 ? Decimals.plain(number, decimals) : "";
    return new Cell(plain.isEmpty() ? halfToEven(number, decimals) : plain);
  }

  private static String halfToEven(double number, int decimals) {
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /**
   * Makes a cell of a number that may be absent.
   *
   * @param number finite, or absent for a blank cell
   * @param decimals digits after the dot, 0 to 12
   * @return the cell
   * @throws IllegalArgumentException if the number is not finite or the decimals are out of range
   */
  public static Cell number(OptionalDouble number, int decimals) {
    return number.isPresent() ? number(number.getAsDouble(), decimals) : BLANK;
  }

  /**
   * Makes a cell of a number with all its digits, so that reading it gives the same number.
   *
   * @param number finite
   * @return the cell
   * @throws IllegalArgumentException if the number is not finite
   */
  public static Cell exact(double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("number must be finite, got " + number);
    }
    return new Cell(Double.toString(number));
  }

  /**
   * Makes a cell of yes or no.
   *
   * @param flag true or false
   * @return the cell, {@code true} or {@code false}
   */
  public static Cell flag(boolean flag) {
    return new Cell(Boolean.toString(flag));
  }

  /**
   * Makes a cell of a time, to the second, with its offset.
   *
   * @param time the time
   * @return the cell, such as {@code 2026-04-16T18:00:00+01:00}
   */
  public static Cell time(OffsetDateTime time) {
    return new Cell(TIME.format(time));
  }

  static boolean looksLikeFormula(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) == '\'') {
      at++;
    }
    return text.length() > at && "=+-@\t\r".indexOf(text.charAt(at)) >= 0;
  }

  /** Takes off the apostrophe before what looks like a formula. */
  static String unguarded(String text) {
    boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && looksLikeFormula(text, 1);
    return guarded ? text.substring(1) : text;
  }

  /** Returns what stands in the cell, before any quoting. */
  @Override
  public String toString() {
    return text;
  }
}
