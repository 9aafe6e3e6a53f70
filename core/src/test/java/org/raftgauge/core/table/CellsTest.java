// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.Problem;

class CellsTest {
  private final Findings findings = new Findings();

  private enum State {
    WHOLE,
    TRIMMED
  }

  @ParameterizedTest
  @CsvSource({
    "12.5, 12.5",
    "-3, -3",
    "+3, 3",
    "0.50, 0.5",
    ".5, 0.5",
    "5., 5",
    "1e2, 100",
    "1E-2, 0.01"
  })
  void numbersAreReadWithADot(String text, double number) {
    assertEquals(OptionalDouble.of(number), number(text, NumberRange.from(-10, 100)));
    assertEquals(List.of(), texts());
  }

  @Test
  void decimalCommaIsShownWithItsDot() {
    assertEquals(OptionalDouble.empty(), number("12,5", NumberRange.from(0, 100)));
    assertEquals(
        List.of("w.csv:7: column x: \"12,5\" is not a number; write a dot, as in 12.5"), texts());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"twelve", "1.2.3", "1 000", "12g", "NaN", "Infinity", "0x10", "1d", "-", "."})
  void whatIsNoNumberIsSaid(String text) {
    assertEquals(OptionalDouble.empty(), number(text, NumberRange.from(0, 100)));
    assertEquals(
        List.of(
            "w.csv:7: column x: \"" + text + "\" is not a number; write a number from 0 to 100"),
        texts());
  }

  @Test
  void numberOutOfRangeNamesTheRange() {
    number("101", NumberRange.from(0, 100));
    number("0", NumberRange.aboveZero(2.5));
    number("1e999", NumberRange.aboveZero(2.5));
    assertEquals(
        List.of(
            "w.csv:7: column x: \"101\" is out of range; write a number from 0 to 100",
            "w.csv:7: column x: \"0\" is out of range; write a number above 0, at most 2.5"),
        texts().subList(0, 2));
    assertEquals(3, texts().size());
  }

  @Test
  void endsOfARangeAreAllowed() {
    assertEquals(OptionalDouble.of(0), number("0", NumberRange.from(0, 100)));
    assertEquals(OptionalDouble.of(100), number("100", NumberRange.from(0, 100)));
    assertEquals(OptionalDouble.of(2.5), number("2.5", NumberRange.aboveZero(2.5)));
  }

  @Test
  void datesAreIso() {
    assertEquals(Optional.of(LocalDate.of(2024, 2, 29)), date("2024-02-29"));
    assertEquals(List.of(), texts());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "06.04.2026",
        "4/6/2026",
        "2026-4-6",
        "2026-02-29",
        "2026-13-01",
        "20260406",
        "soon"
      })
  void whatIsNoDateIsSaid(String text) {
    assertEquals(Optional.empty(), date(text));
    assertEquals(
        List.of(
            "w.csv:7: column x: \""
                + text
                + "\" is not a date; write year-month-day, as in 2026-04-06"),
        texts());
  }

  @Test
  void yearsThatAreSlipsAreSaid() {
    date("0206-04-06");
    date("1970-01-01");
    assertEquals(
        List.of(
            "w.csv:7: column x: \"0206-04-06\" is out of range; write a date from 1990-01-01 to"
                + " 2200-12-31",
            "w.csv:7: column x: \"1970-01-01\" is out of range; write a date from 1990-01-01 to"
                + " 2200-12-31"),
        texts());
  }

  @Test
  void blankCellsAreNothingUnlessTheyMustBeFilled() {
    Cells cells = cells("");
    assertEquals(OptionalDouble.empty(), cells.number("x", NumberRange.from(0, 1)));
    assertEquals(Optional.empty(), cells.date("x"));
    assertEquals(Optional.empty(), cells.choice("x", State.values()));
    assertTrue(cells.sound());
    assertEquals("", cells.required("x"));
    assertFalse(cells.sound());
    assertEquals(List.of("w.csv:7: column x: the cell is blank; fill it in"), texts());
  }

  @Test
  void wordsAreTheChoicesInLowerCase() {
    assertEquals(Optional.of(State.TRIMMED), cells("trimmed").choice("x", State.values()));
    assertEquals(Optional.empty(), cells("trimed").choice("x", State.values()));
    assertEquals(
        List.of(
            "w.csv:7: column x: \"trimed\" is unknown; did you mean \"trimmed\"? known: whole,"
                + " trimmed"),
        texts());
  }

  @Test
  void warningLeavesTheRowSound() {
    Cells cells = cells("1");
    cells.warning("x", "odd", "look");
    assertTrue(cells.sound());
    assertEquals(7, cells.line());
    assertEquals("1", cells.text("x"));
  }

  @Test
  void errorsOfOtherRowsDoNotCount() {
    cells("").required("x");
    assertTrue(cells("1").sound());
  }

  private Cells cells(String text) {
    return new Cells(new CsvRow("w.csv", 7, Map.of("x", text)), findings);
  }

  private OptionalDouble number(String text, NumberRange range) {
    return cells(text).number("x", range);
  }

  private Optional<LocalDate> date(String text) {
    return cells(text).date("x");
  }

  private List<String> texts() {
    return findings.list().stream().map(Problem::toString).toList();
  }
}
