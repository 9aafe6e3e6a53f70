// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;

/**
 * Reads the cells of one row as what they should be. A cell that is not is added to the findings
 * and read as blank; {@link #sound()} tells at the end whether the row can be used.
 */
public final class Cells {
  private final CsvRow row;
  private final Findings findings;
  private final int errorsBefore;

  /**
   * Begins a row.
   *
   * @param row the row
   * @param findings takes what is wrong with it
   */
  public Cells(CsvRow row, Findings findings) {
    this.row = row;
    this.findings = findings;
    this.errorsBefore = findings.errors();
  }

  /** Returns the line on which the row begins, from 1. */
  public int line() {
    return row.line();
  }

  /** Says whether no error was found in this row so far. */
  public boolean sound() {
    return findings.errors() == errorsBefore;
  }

  /**
   * Returns the text of a cell that may be blank.
   *
   * @param column the column's name
   * @return its text, empty where blank
   */
  public String text(String column) {
    return row.text(column);
  }

  /**
   * Returns the text of a cell that must not be blank.
   *
   * @param column the column's name
   * @return its text, empty where it is blank all the same
   */
  public String required(String column) {
    String text = row.text(column);
    if (text.isEmpty()) {
      error(column, "the cell is blank", "fill it in");
    }
    return text;
  }

  /**
   * Reads a number that may be left blank.
   *
   * @param column the column's name
   * @param range the numbers allowed
   * @return the number, or nothing
   */
  public OptionalDouble number(String column, NumberRange range) {
    String text = row.text(column);
    return text.isEmpty() ? OptionalDouble.empty() : range.read(row.place(column), text, findings);
  }

  /**
   * Reads a date that may be left blank.
   *
   * @param column the column's name
   * @return the date, or nothing
   */
  public Optional<LocalDate> date(String column) {
    String text = row.text(column);
    return text.isEmpty() ? Optional.empty() : DateText.read(row.place(column), text, findings);
  }

  /**
   * Reads one of a few words, the lower-case names of an enum, that may be left blank.
   *
   * @param <E> the enum
   * @param column the column's name
   * @param choices all the choices
   * @return the choice, or nothing
   */
  public <E extends Enum<E>> Optional<E> choice(String column, E[] choices) {
    String text = row.text(column);
    Optional<E> chosen =
        Arrays.stream(choices).filter(choice -> word(choice).equals(text)).findFirst();
    if (chosen.isEmpty() && !text.isEmpty()) {
      unknown(column, text, Arrays.stream(choices).map(Cells::word).toList());
    }
    return chosen;
  }

  private static String word(Enum<?> choice) {
    return choice.name().toLowerCase(Locale.ROOT);
  }

  /**
   * Adds an error about a name that is not known.
   *
   * @param column the column it stands in
   * @param found the name
   * @param known the names that would be right
   */
  public void unknown(String column, String found, List<String> known) {
    error(column, "\"" + found + "\" is unknown", NearestSpelling.remedy(found, known));
  }

  /**
   * Adds an error about a cell.
   *
   * @param column the column it stands in
   * @param found what is wrong
   * @param remedy how to mend it
   */
  public void error(String column, String found, String remedy) {
    findings.error(row.place(column), found, remedy);
  }

  /**
   * Adds a warning about a cell.
   *
   * @param column the column it stands in
   * @param found what is probably not meant
   * @param remedy how to mend it
   */
  public void warning(String column, String found, String remedy) {
    findings.warning(row.place(column), found, remedy);
  }
}
