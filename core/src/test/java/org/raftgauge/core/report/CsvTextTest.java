// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTextTest {

  @Test
  void linesEndInCrlfAndCellsAreQuotedOnlyWhereTheyMustBe() {
    CsvText csv = new CsvText(List.of("a", "b", "c"));

    csv.text("plain text").text("with, comma").text("with \"quotes\"").endRow();
    csv.text("two\nlines").text("").text("'").endRow();

    // RFC 4180, section 2, rules 1, 5, 6 and 7.
    assertEquals(
        "a,b,c\r\nplain text,\"with, comma\",\"with \"\"quotes\"\"\"\r\n\"two\nlines\",,'\r\n",
        csv.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {"=1+1|'=1+1", "+351 123|'+351 123", "-R1|'-R1", "@SUM(A1)|'@SUM(A1)", "R-1|R-1"})
  void textThatASpreadsheetWouldTakeForAFormulaGetsAnApostrophe(String text, String cell) {
    assertEquals("a\r\n" + cell + "\r\n", new CsvText(List.of("a")).text(text).endRow().toString());
  }

  @Test
  void tabAndCarriageReturnAtTheStartAreMadeSafeToo() {
    assertEquals("a\r\n'\tx\r\n", new CsvText(List.of("a")).text("\tx").endRow().toString());
    assertEquals("a\r\n\"'\rx\"\r\n", new CsvText(List.of("a")).text("\rx").endRow().toString());
  }

  @ParameterizedTest
  @CsvSource({
    "1.005,2,1.00", // half to even on the decimal digits that Double.toString shows
    "1.015,2,1.02",
    "-1.26,1,-1.3",
    "-0.001,2,0.00",
    "12345678.9,1,12345678.9",
    "1e-9,4,0.0000",
    "3,0,3"
  })
  void numbersAreRoundedHalfToEvenAndStayNumbers(double value, int decimals, String cell) {
    assertEquals(
        "a\r\n" + cell + "\r\n",
        new CsvText(List.of("a")).number(value, decimals).endRow().toString());
  }

  @Test
  void anAbsentNumberIsAnEmptyCell() {
    assertEquals(
        "a,b\r\n7,\r\n",
        new CsvText(List.of("a", "b"))
            .number(7)
            .number(OptionalDouble.empty(), 2)
            .endRow()
            .toString());
  }

  @Test
  void aRowThatIsNotFullIsAWrongCall() {
    CsvText csv = new CsvText(List.of("a", "b")).text("x");

    assertEquals(
        "a row must have 2 cells, got 1",
        assertThrows(IllegalArgumentException.class, csv::endRow).getMessage());
  }
}
