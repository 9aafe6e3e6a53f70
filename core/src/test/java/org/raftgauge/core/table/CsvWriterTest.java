// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvWriterTest {
  @TempDir Path folder;

  @Test
  void rowsEndInCrlfAndCommasAreQuoted() throws IOException {
    // RFC 4180, section 2, rules 1, 6 and 7.
    assertEquals(
        "raft,note\r\nR1,\"a, \"\"b\"\"\"\r\nR2,\"c\nd\"\r\n",
        written(List.of("raft", "note"), List.of("R1", "a, \"b\""), List.of("R2", "c\nd")));
  }

  @Test
  void fileIsUtf8WithoutAByteOrderMark() throws IOException {
    Path file = folder.resolve("out.csv");
    try (CsvWriter writer = CsvWriter.to(file, List.of("raft"))) {
      writer.row(List.of(Cell.text("ção")));
    }
    assertArrayEquals("raft\r\nção\r\n".getBytes(StandardCharsets.UTF_8), Files.readAllBytes(file));
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "=HYPERLINK(\"x\")"})
  void noTextStartsAFormula(String text) {
    assertEquals("'" + text, Cell.text(text).toString());
  }

  @Test
  void ordinaryTextStaysAsItIs() {
    assertEquals("DR-0401", Cell.text("DR-0401").toString());
    assertEquals("a=b", Cell.text("a=b").toString());
    assertEquals("", Cell.text("").toString());
    assertEquals("<b>", Cell.text("<b>").toString());
  }

  // Half to even on the shortest decimal of the double: 0.125 -> 0.12, 0.135 -> 0.14.
  @ParameterizedTest
  @CsvSource({
    "12.5, 1, 12.5",
    "12, 2, 12.00",
    "-0.25, 1, -0.2",
    "0.125, 2, 0.12",
    "0.135, 2, 0.14",
    "1234567.8, 0, 1234568",
    "1e-9, 3, 0.000",
    "-0.0001, 2, 0.00",
    "1e15, 0, 1000000000000000"
  })
  void numbersHaveFixedDecimalsAndADot(double number, int decimals, String text) {
    assertEquals(text, Cell.number(number, decimals).toString());
  }

  @Test
  void negativeNumberStaysANumber() {
    assertEquals("-1.5", Cell.number(-1.5, 1).toString());
    assertEquals("-3", Cell.whole(-3).toString());
  }

  @Test
  void numbersDoNotFollowTheMachinesLanguage() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertEquals("1234.50", Cell.number(1234.5, 2).toString());
      assertEquals(
          "2026-04-16T18:00:00+01:00",
          Cell.time(OffsetDateTime.parse("2026-04-16T18:00:00.25+01:00")).toString());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void absentNumberIsBlank() {
    assertEquals("", Cell.number(OptionalDouble.empty(), 2).toString());
    assertEquals("0.50", Cell.number(OptionalDouble.of(0.5), 2).toString());
    assertEquals("", Cell.blank().toString());
  }

  @Test
  void numberThatIsNoneIsRefused() {
    assertEquals(
        "number must be finite and decimals 0 to 12, got NaN and 2",
        assertThrows(IllegalArgumentException.class, () -> Cell.number(Double.NaN, 2))
            .getMessage());
  }

  @Test
  void listsAreJoinedBySemicolons() {
    assertEquals("A1;B2", Cell.list(List.of("A1", "B2")).toString());
    assertEquals("a,b;c", Cell.list(List.of("a;b", "c")).toString());
    assertEquals("'=x;y", Cell.list(List.of("=x", "y")).toString());
    assertEquals("", Cell.list(List.of()).toString());
  }

  @Test
  void timesCarryTheirOffset() {
    assertEquals(
        "2026-01-16T18:00:05+00:00",
        Cell.time(OffsetDateTime.parse("2026-01-16T18:00:05Z")).toString());
    assertEquals("true", Cell.flag(true).toString());
  }

  @Test
  void rowMustFitTheHeader() throws IOException {
    try (CsvWriter writer = CsvWriter.to(new StringWriter(), List.of("a", "b"))) {
      assertEquals(
          "a row must have 2 cells, got 1",
          assertThrows(IllegalArgumentException.class, () -> writer.row(List.of(Cell.text("x"))))
              .getMessage());
    }
  }

  @Test
  void headerMustBeOfDifferentColumns() {
    assertEquals(
        "columns must be one or more, none twice, got [a, a]",
        assertThrows(
                IllegalArgumentException.class,
                () -> CsvWriter.to(new StringWriter(), List.of("a", "a")))
            .getMessage());
  }

  @Test
  void whatIsWrittenIsReadBack() throws IOException {
    Random random = new Random(20260406);
    String letters = "ab =+-@,;\"'\n\r\té0<&";
    for (int n = 0; n < 500; n++) {
      StringBuilder text = new StringBuilder("x");
      for (int i = random.nextInt(8); i > 0; i--) {
        text.insert(
            random.nextInt(text.length() + 1), letters.charAt(random.nextInt(letters.length())));
      }
      String cell = text.toString().strip();
      String csv = written(List.of("k", "v"), List.of("1", cell));
      CsvTable table = CsvTable.parse(csv, "t.csv", new Columns(List.of("k", "v"), List.of()));
      assertEquals(List.of(), table.problems());
      assertEquals(cell, table.rows().get(0).text("v"));
    }
  }

  @SafeVarargs
  private static String written(List<String> columns, List<String>... rows) throws IOException {
    StringWriter out = new StringWriter();
    try (CsvWriter writer = CsvWriter.to(out, columns)) {
      for (List<String> row : rows) {
        writer.row(row.stream().map(Cell::text).toList());
      }
    }
    return out.toString();
  }
}
