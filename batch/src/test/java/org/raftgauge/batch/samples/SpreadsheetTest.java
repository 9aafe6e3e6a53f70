// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.batch.fixture.GrownFarm;

/**
 * Opens an evening's tables in LibreOffice without a screen and in Python's csv; each is skipped
 * where there is none. The lot of every planting is written as a formula.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SpreadsheetTest {
  private static final List<String> TABLES =
      List.of("forecast.csv", "verdicts.csv", "curves.csv", "worklist.csv", "supply.csv");

  /** Comma, double quote, UTF-8, from line 1, all columns as they are, English. */
  private static final String FILTER =
      "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false";

  private static final int PATIENCE_S = 120;

  private Path folder;

  @BeforeAll
  void judgeAnEvening(@TempDir Path farm) throws IOException {
    folder = farm;
    GrownFarm.write(farm);
    Path plantings = farm.resolve("book/plantings.csv");
    List<String> rows = new ArrayList<>();
    for (String row : Files.readAllLines(plantings)) {
      rows.add(row + (rows.isEmpty() ? ",lot" : ",=2+3"));
    }
    Files.write(plantings, rows);
    String book = farm.resolve("book").toString();
    call("import", farm.resolve("sites.csv").toString(), "--book", book);
    call("judge", "--book", book, "--on", "" + GrownFarm.TONIGHT, "--out", farm + "/evening");
  }

  private static void call(String... args) {
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    assertEquals(0, Raftgauge.run(args, new BookWorkplace(), new Console(nowhere, nowhere, false)));
  }

  @Test
  void theLotIsTextAndNoFormula() throws IOException {
    List<List<String>> forecast = cells(table("forecast.csv"));
    int lot = forecast.get(0).indexOf("lot");
    assertEquals("'=2+3", forecast.get(1).get(lot));
  }

  @Test
  void pythonReadsTheSameCells() throws Exception {
    String program =
        "import csv,sys\n"
            + "for r in csv.reader(open(sys.argv[1],newline='',encoding='utf-8'),strict=True):\n"
            + "  sys.stdout.buffer.write(('\\x1f'.join(r)+'\\x1e').encode('utf-8'))\n";
    for (String name : TABLES) {
      Path said = folder.resolve("python.txt");
      boolean ran = ran(said, List.of("python3", "-c", program, table(name).toString()));
      assumeTrue(ran, "no python3 on the PATH: the tables are not read by it");
      List<List<String>> rows = new ArrayList<>();
      for (String row : Files.readString(said).split("\u001e")) {
        rows.add(List.of(row.split("\u001f", -1)));
      }
      assertEquals(cells(table(name)), rows, name);
    }
  }

  @Test
  void libreOfficeShowsTheSameCells() throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                "soffice",
                "-env:UserInstallation=" + folder.resolve("office").toUri(),
                "--headless",
                "--convert-to",
                FILTER,
                "--outdir",
                folder.resolve("opened").toString()));
    TABLES.forEach(name -> command.add(table(name).toString()));
    boolean ran = ran(folder.resolve("office.txt"), command);
    assumeTrue(ran, "no soffice on the PATH: the tables are not opened in a spreadsheet");
    for (String name : TABLES) {
      List<List<String>> written = cells(table(name));
      List<List<String>> shown = cells(folder.resolve("opened").resolve(name));
      assertEquals(written.size(), shown.size(), name);
      for (int row = 0; row < written.size(); row++) {
        for (int column = 0; column < written.get(row).size(); column++) {
          same(written.get(row).get(column), shown.get(row).get(column), name + ":" + (row + 1));
        }
      }
    }
  }

  /** Texts must be equal, numbers may lose zeros at their end. */
  private static void same(String written, String shown, String where) {
    if (!written.equals(shown)) {
      assertTrue(
          written.matches("-?[0-9.]+(E-?[0-9]+)?"), where + ": " + written + " became " + shown);
      assertEquals(Double.parseDouble(written), Double.parseDouble(shown), 0, where);
    }
  }

  private Path table(String name) {
    return folder.resolve("evening").resolve(name);
  }

  private static List<List<String>> cells(Path file) throws IOException {
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, CSVFormat.RFC4180)) {
      return parser.getRecords().stream().map(r -> Arrays.asList(r.values())).toList();
    }
  }

  /** Runs a program; false where there is none. */
  private static boolean ran(Path said, List<String> command) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(said.toFile())
              .start();
    } catch (IOException none) {
      return false;
    }
    assertTrue(process.waitFor(PATIENCE_S, TimeUnit.SECONDS), command.get(0) + " hangs");
    assertEquals(0, process.exitValue(), Files.readString(said));
    return true;
  }
}
