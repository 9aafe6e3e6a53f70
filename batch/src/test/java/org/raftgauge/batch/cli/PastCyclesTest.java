// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.ImportedBook;

/** Past cycles taken in as measures: what tonight's plants are held against. */
class PastCyclesTest {
  private static final LocalDate FIRST = LocalDate.of(2027, 1, 4);
  private static final int CYCLE_DAYS = 26;
  private static final int RAFTS = 4;
  private static final List<String> SITES = List.of("A1", "A2", "B1", "B2", "C1", "C2");
  private static final List<String> TABLES = List.of("verdicts.csv", "curves.csv", "worklist.csv");

  @TempDir Path folder;

  /**
   * Cycles of four rafts one after another, the last of them not ended. Plants grow on a Gompertz
   * curve to 500 cm2, each by up to 15 % its own; the fourth cycle stands at 80 % throughout, and
   * its B1 of K-1 loses 6 % a day on the others.
   */
  private void makeBook(int cycles, LocalDate lastPhoto) throws IOException {
    ImportedBook book =
        new ImportedBook(
            folder,
            3,
            2,
            """
            crops:
              kale:
                colour_model: green-leaf
                height_model: {scale_mm: 5, exponent: 0.5}
            """);
    Random random = new Random(5);
    for (int cycle = 0; cycle < cycles; cycle++) {
      boolean last = cycle == cycles - 1;
      LocalDate start = FIRST.plusDays((long) CYCLE_DAYS * cycle);
      for (int raft = 0; raft < RAFTS; raft++) {
        String ended = last ? "" : start.plusDays(CYCLE_DAYS - 1).toString();
        book.in("P" + (1 + raft % 2)).plant("K-" + raft, "kale", start, ended);
        for (String site : SITES) {
          double own = Math.exp(random.nextDouble(-0.15, 0.15)) * (cycle == 3 ? 0.8 : 1);
          boolean slow = cycle == 3 && raft == 1 && site.equals("B1");
          for (int day = 0; day < CYCLE_DAYS - 1; day++) {
            double dat = day + 0.75;
            double area =
                own
                    * 500
                    * Math.exp(-Math.exp(-0.12 * (dat - 14)) + 0.03 * random.nextGaussian())
                    * (slow ? Math.exp(-0.06 * dat) : 1);
            if (!start.plusDays(day).isAfter(lastPhoto)) {
              book.area("K-" + raft, site, start.plusDays(day), area);
            }
          }
        }
      }
    }
    book.write();
  }

  @Test
  void withThreePastCyclesTheyAreTheReferenceAndTheShiftIsSaid() throws IOException {
    LocalDate evening = FIRST.plusDays(3 * CYCLE_DAYS + 10);
    makeBook(4, evening);
    judge(evening, "out");
    for (CSVRecord row : rows("out/verdicts.csv")) {
      if (row.get("scope").equals("site") || row.get("scope").equals("raft")) {
        assertEquals("cycles", row.get("reference"), row.toString());
      }
      if (row.get("scope").equals("raft")) {
        // Tonight's plants stand at 80 % of those of the past: shifted by -20 %, some plants' luck.
        String said = row.get("evidence").replaceAll(".*shifted by ([-+]\\d+) %.*", "$1");
        assertEquals(-20, Integer.parseInt(said), 10, row.get("evidence"));
      }
      boolean slow = row.get("raft").equals("K-1") && row.get("site").equals("B1");
      assertTrue(slow || !row.get("verdict").equals("lagging"), row.toString());
    }
    assertEquals("lagging", verdict("out", "K-1", "B1"));
    assertEquals(4, files("out/plots"), "a plot for each raft");
  }

  @Test
  void oneEveningAfterThreeCyclesHasCurvesThatLeanOnThem() throws IOException {
    LocalDate evening = FIRST.plusDays(3L * CYCLE_DAYS);
    makeBook(4, evening);
    judge(evening, "out");
    for (CSVRecord row : rows("out/curves.csv")) {
      assertTrue(row.get("reason").contains("leans on past cycles"), row.get("reason"));
      // The past plants' curve ends at 500 cm2.
      assertEquals(500, Double.parseDouble(row.get("asymptote_cm2")), 200, row.toString());
    }
  }

  @Test
  void twoPastCyclesAreTooFew() throws IOException {
    LocalDate evening = FIRST.plusDays(2 * CYCLE_DAYS + 10);
    makeBook(3, evening);
    judge(evening, "out");
    for (CSVRecord row : rows("out/verdicts.csv")) {
      if (row.get("scope").equals("site")) {
        assertEquals("cohort", row.get("reference"), row.toString());
      }
    }
  }

  @Test
  void whatComesLaterChangesNoByteOfAnEvening() throws IOException {
    LocalDate evening = FIRST.plusDays(3 * CYCLE_DAYS + 6);
    makeBook(4, evening);
    judge(evening, "before");
    // Two weeks more of photos, another cycle, and a call.
    makeBook(5, LocalDate.of(2028, 1, 1));
    write("book/calls.csv", "raft,site,called_on,call\nK-0,A1,2027-05-01,lagging\n");
    judge(evening, "after");
    for (String table : TABLES) {
      assertEquals(read("before/" + table), read("after/" + table), table);
    }
    assertEquals(read("before/plots/growth-K-1.svg"), read("after/plots/growth-K-1.svg"));
  }

  private String verdict(String out, String raft, String site) throws IOException {
    return rows(out + "/verdicts.csv").stream()
        .filter(r -> r.get("raft").equals(raft) && r.get("site").equals(site))
        .map(r -> r.get("verdict"))
        .findFirst()
        .orElseThrow();
  }

  private void judge(LocalDate evening, String to) {
    run("import", folder.resolve("sites.csv").toString(), "--book", path("book"));
    run("judge", "--book", path("book"), "--on", evening.toString(), "--out", path(to));
  }

  private static void run(String... args) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(err, true, StandardCharsets.UTF_8);
    int exit = Raftgauge.run(args, new BookWorkplace(), new Console(to, to, false));
    assertEquals(0, exit, err.toString(StandardCharsets.UTF_8));
  }

  private List<CSVRecord> rows(String table) throws IOException {
    return CSVFormat.RFC4180
        .builder()
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(read(table)))
        .getRecords();
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private long files(String name) throws IOException {
    try (Stream<Path> list = Files.list(folder.resolve(name))) {
      return list.count();
    }
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }
}
