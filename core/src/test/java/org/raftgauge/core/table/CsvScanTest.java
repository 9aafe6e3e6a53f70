// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvScanTest {
  private static final String LETTERS = "ab=+-@'\",;\t\r\n \u00e9\u6c34";

  @TempDir private Path folder;

  @Test
  void whateverTextIsWrittenComesBackAsItWas() throws IOException {
    Random random = new Random(11);
    List<List<String>> written = new ArrayList<>();
    Path file = folder.resolve("t.csv");
    try (CsvWriter csv = CsvWriter.to(file, List.of("a", "b"))) {
      for (int i = 0; i < 2000; i++) {
        List<String> row = List.of(text(random), text(random));
        written.add(row);
        csv.row(row.stream().map(Cell::text).toList());
      }
    }

    assertEquals(written, read(file, List.of("a", "b")));
  }

  @Test
  void noCellOfTextBeginsAFormula() {
    for (String text : List.of("=1", "'=1", "''+1", "@a", "-1", "\t1", "\r=1")) {
      assertEquals("'" + text, Cell.text(text).toString());
      assertEquals(text, Cell.unguarded(Cell.text(text).toString()));
    }
    assertEquals("'tis", Cell.text("'tis").toString(), "an apostrophe before a letter is none");
  }

  @Test
  void anExactNumberIsReadAsTheSameNumber() {
    Random random = new Random(12);
    for (int i = 0; i < 1000; i++) {
      double number = random.nextGaussian() * Math.pow(10, random.nextInt(40) - 20);
      assertEquals(number, Double.parseDouble(Cell.exact(number).toString()), 0.0);
    }
    assertThrows(IllegalArgumentException.class, () -> Cell.exact(Double.NaN));
  }

  @Test
  void anotherHeaderAShortRowAndAStrayQuoteAreNamedWithTheirPlace() throws IOException {
    Path file = folder.resolve("t.csv");
    Files.writeString(file, "a,c\r\n1,2\r\n");
    assertEquals(file + ":1: the header is not a,b", fault(file));
    Files.writeString(file, "a,b\r\n1,2\r\n3\r\n");
    assertEquals(file + ":3: the row has 1 cells, the header 2", fault(file));
    Files.writeString(file, "a,b\r\n\"1\"x,2\r\n");
    assertEquals(file + ": a double quote is out of place", fault(file));
    Files.write(file, "a,b\r\n1,\u00e9\r\n".getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(file + ": a letter is not UTF-8", fault(file));
  }

  private String fault(Path file) {
    return assertThrows(IOException.class, () -> read(file, List.of("a", "b"))).getMessage();
  }

  private static List<List<String>> read(Path file, List<String> columns) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    CsvScan.read(file, columns, rows::add);
    return rows;
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder();
    for (int n = random.nextInt(6); n > 0; n--) {
      text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return text.toString();
  }
}
