// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.Problem;

class CsvTableTest {
  private static final Columns COLUMNS =
      new Columns(List.of("raft", "crop"), List.of("pond", "note"));

  @TempDir Path folder;

  @Test
  void tableOfMostlyOtherColumnsIsSaidInOneLine() {
    assertEquals(
        List.of(
            "t.csv:1: the column crop is missing: it seems to be another table; give the right"
                + " file, or add them; the header is raft,crop,pond,note"),
        texts(read("raft,plants,grams,baskets\nR1,20,3000,4\n")));
  }

  @Test
  void cellsAreFoundByTheirColumnInAnyOrder() {
    CsvTable table = read("note,crop,raft\nfirst,basil,R1\n");
    assertEquals(List.of(), table.problems());
    CsvRow row = table.rows().get(0);
    assertEquals("R1", row.text("raft"));
    assertEquals("basil", row.text("crop"));
    assertEquals("first", row.text("note"));
    assertEquals("", row.text("pond"));
    assertEquals("t.csv:2: column crop", row.place("crop"));
  }

  @Test
  void headersInCapitalsAreReadAsSmallLetters() {
    CsvTable table = read("Raft,CROP,Note\nR1,Basil,Seen\n");
    assertEquals(List.of(), table.problems());
    assertEquals("R1", table.rows().get(0).text("raft"));
    assertEquals("Basil", table.rows().get(0).text("crop"), "cells keep theirs");
    assertEquals(
        List.of("t.csv:1: column raft: the column stands twice; keep one of the two"),
        texts(read("raft,Raft,crop\nR1,R2,basil\n")));
  }

  // RFC 4180, section 2, rules 5 to 7: quotes, commas and line breaks inside quotes.
  @Test
  void quotedCellsMayHoldCommasQuotesAndLineBreaks() {
    CsvTable table = read("raft,crop,note\r\nR1,basil,\"a, \"\"b\"\"\r\nc\"\r\nR2,basil,d\r\n");
    assertEquals(List.of(), table.problems());
    assertEquals("a, \"b\"\r\nc", table.rows().get(0).text("note"));
    assertEquals("d", table.rows().get(1).text("note"));
  }

  @Test
  void lineIsWhereTheRowBeginsThoughACellBeforeSpansLines() {
    CsvTable table = read("raft,crop,note\nR1,basil,\"a\nb\nc\"\nR2,basil,\"d\ne\"\nR3,basil,f\n");
    assertEquals(List.of(2, 5, 7), table.rows().stream().map(CsvRow::line).toList());
  }

  @Test
  void blankLinesAndRowsArePassedOverAndCountAsLines() {
    CsvTable table = read("\nraft,crop\n\nR1,basil\n,\n  \nR2,basil");
    assertEquals(List.of(), table.problems());
    assertEquals(List.of(4, 7), table.rows().stream().map(CsvRow::line).toList());
  }

  @Test
  void anyLineEndIsRead() {
    for (String end : List.of("\n", "\r\n", "\r")) {
      CsvTable table = read("raft,crop" + end + "R1,basil" + end + "R2,basil" + end);
      assertEquals(List.of(2, 3), table.rows().stream().map(CsvRow::line).toList());
      assertEquals("basil", table.rows().get(1).text("crop"));
    }
  }

  @Test
  void spacesAroundCellsAndHeadersDoNotCount() {
    CsvTable table = read("raft , crop\n R1 ,  basil  \n");
    assertEquals("R1", table.rows().get(0).text("raft"));
    assertEquals("basil", table.rows().get(0).text("crop"));
  }

  @Test
  void blankCellsBehindTheLastColumnAreASpreadsheetsHabit() {
    CsvTable table = read("raft,crop\nR1,basil,,\n");
    assertEquals(List.of(), table.problems());
    assertEquals(1, table.rows().size());
  }

  @Test
  void byteOrderMarkIsNotPartOfTheFirstColumn() throws IOException {
    CsvTable table = readBytes("\uFEFFraft,crop\nR1,basil\n".getBytes(StandardCharsets.UTF_8));
    assertEquals(List.of(), table.problems());
    assertEquals("R1", table.rows().get(0).text("raft"));
  }

  @Test
  void lettersBeyondAsciiAreRead() throws IOException {
    CsvTable table =
        readBytes("raft,crop\nR1,alface crespa ção\n".getBytes(StandardCharsets.UTF_8));
    assertEquals("alface crespa ção", table.rows().get(0).text("crop"));
  }

  @Test
  void utf16IsNamed() throws IOException {
    String text = "raft,crop\nR1,basil\n";
    String expected =
        "t.csv: the file is UTF-16; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\")";
    for (String encoding : List.of("UTF-16", "UTF-16LE", "UTF-16BE")) {
      CsvTable table = readBytes(text.getBytes(Charset.forName(encoding)));
      assertEquals(List.of(expected), texts(table), encoding);
      assertTrue(table.rows().isEmpty());
    }
  }

  @Test
  void letterOfAnOldEncodingIsNamedWithItsLine() throws IOException {
    CsvTable table =
        readBytes("raft,crop\nR1,basil\nR2,ção\n".getBytes(Charset.forName("windows-1252")));
    assertEquals(
        List.of(
            "t.csv:3: a letter is not UTF-8; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\")"),
        texts(table));
  }

  @Test
  void fileThatEndsInTheMiddleOfALetterIsNamed() throws IOException {
    byte[] whole = "raft,crop\nR1,ã".getBytes(StandardCharsets.UTF_8);
    CsvTable table = readBytes(java.util.Arrays.copyOf(whole, whole.length - 1));
    assertEquals(
        List.of(
            "t.csv:2: a letter is not UTF-8; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\")"),
        texts(table));
  }

  @Test
  void missingFileIsNamed() {
    CsvTable table = CsvTable.read(folder.resolve("no.csv"), "no.csv", COLUMNS);
    assertEquals(
        List.of("no.csv: there is no such file; make it, or look for it elsewhere"), texts(table));
  }

  @Test
  void emptyFileIsTold() {
    assertEquals(
        List.of("t.csv: the file is empty; begin it with the header raft,crop,pond,note"),
        texts(read("")));
    assertEquals(
        List.of("t.csv: the file is empty; begin it with the header raft,crop,pond,note"),
        texts(read("\n\n")));
  }

  @Test
  void headerAloneIsFine() {
    CsvTable table = read("raft,crop\n");
    assertEquals(List.of(), table.problems());
    assertEquals(List.of(), table.rows());
  }

  @Test
  void semicolonsAreNamedRatherThanReadAsOneColumn() {
    CsvTable table = read("raft;crop\nR1;basil\n");
    assertEquals(
        List.of(
            "t.csv:1: cells are separated by \";\"; save it with commas between the cells and dots"
                + " in the numbers"),
        texts(table));
    assertTrue(table.rows().isEmpty());
  }

  @Test
  void tabsAreNamed() {
    assertEquals(
        List.of(
            "t.csv:1: cells are separated by tabs; save it with commas between the cells and dots"
                + " in the numbers"),
        texts(read("raft\tcrop\nR1\tbasil\n")));
  }

  @Test
  void headerThatStandsTwiceIsNamed() {
    CsvTable table = read("raft,crop,raft\nR1,basil,R2\n");
    assertEquals(
        List.of("t.csv:1: column raft: the column stands twice; keep one of the two"),
        texts(table));
    assertTrue(table.rows().isEmpty());
  }

  @Test
  void missingColumnIsNamed() {
    CsvTable table = read("raft,pond\nR1,P1\n");
    assertEquals(
        List.of(
            "t.csv:1: column crop: the column is missing; add it; the header is"
                + " raft,crop,pond,note"),
        texts(table));
    assertTrue(table.rows().isEmpty());
  }

  @Test
  void unknownColumnIsAWarningWithTheNearestName() {
    CsvTable table = read("raft,crop,pnd\nR1,basil,P1\n");
    assertEquals(
        List.of(
            "t.csv:1: column pnd: the column is unknown and is not read; did you mean \"pond\"?"
                + " known: pond, note"),
        texts(table));
    assertFalse(table.problems().get(0).isError());
    assertEquals(1, table.rows().size());
  }

  @Test
  void misspeltColumnThatMustBeThereIsNamedBothWays() {
    assertEquals(
        List.of(
            "t.csv:1: column corp: the column is unknown and is not read; did you mean \"crop\"?"
                + " known: crop, pond, note",
            "t.csv:1: column crop: the column is missing; add it; the header is"
                + " raft,crop,pond,note"),
        texts(read("raft,corp\nR1,basil\n")));
  }

  @Test
  void anotherTableIsSaidOnceNotColumnByColumn() {
    String text = "photo,sha256,status,remedy\np.jpg,0a,used,\n";
    Columns columns = new Columns(List.of("raft", "site", "area_cm2"), List.of("pond"));
    assertEquals(
        List.of(
            "t.csv:1: the columns raft, site, area_cm2 are missing: it seems to be another table;"
                + " give the right file, or add them; the header is raft,site,area_cm2,pond"),
        texts(CsvTable.parse(text, "t.csv", columns)));
  }

  @Test
  void raggedRowIsNamedAndTheOthersAreRead() {
    CsvTable table = read("raft,crop,pond\nR1,basil\nR2,basil,P1\nR3,basil,P1,x\n");
    String remedy =
        "give each column its cell; put text that holds a comma in double quotes, and write a dot"
            + " in numbers, as in 12.5";
    assertEquals(
        List.of(
            "t.csv:2: the row has 2 cells, the header 3; " + remedy,
            "t.csv:4: the row has 4 cells, the header 3; " + remedy),
        texts(table));
    assertEquals(List.of("R2"), table.rows().stream().map(r -> r.text("raft")).toList());
  }

  @Test
  void rowThatStandsTwiceIsReadOnce() {
    CsvTable table = read("raft,crop\nR1,basil\nR2,basil\nR1,basil\n");
    assertEquals(
        List.of("t.csv:4: the row is the same as line 2; delete one of the two"), texts(table));
    assertEquals(2, table.rows().size());
  }

  @Test
  void quoteThatIsNeverClosedIsNamedWhereItsRowBegins() {
    CsvTable table = read("raft,crop\nR1,basil\nR2,\"basil\nR3,basil\n");
    assertEquals(
        List.of(
            "t.csv:3: a double quote is out of place in the row that begins here; close it, and"
                + " write a quote inside a quoted cell twice"),
        texts(table));
    assertEquals(1, table.rows().size());
  }

  @Test
  void textBehindAClosingQuoteIsNamed() {
    CsvTable table = read("raft,crop\nR1,\"ba\"sil\nR2,basil\n");
    assertEquals(
        List.of(
            "t.csv:2: a double quote is out of place in the row that begins here; close it, and"
                + " write a quote inside a quoted cell twice"),
        texts(table));
  }

  @Test
  void apostropheBeforeAFormulaIsTakenOff() {
    CsvTable table = read("raft,crop\n'=1+1,'tis\n");
    assertEquals("=1+1", table.rows().get(0).text("raft"));
    assertEquals("'tis", table.rows().get(0).text("crop"));
  }

  private static CsvTable read(String text) {
    return CsvTable.parse(text, "t.csv", COLUMNS);
  }

  private CsvTable readBytes(byte[] bytes) throws IOException {
    Path file = folder.resolve("t.csv");
    Files.write(file, bytes);
    return CsvTable.read(file, "t.csv", COLUMNS);
  }

  private static List<String> texts(CsvTable table) {
    return table.problems().stream().map(Problem::toString).toList();
  }
}
