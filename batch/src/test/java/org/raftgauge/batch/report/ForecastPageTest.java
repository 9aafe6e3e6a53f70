// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.batch.fixture.GrownFarm;
import org.raftgauge.batch.forecast.ForecastOfEvening;
import org.raftgauge.batch.run.EveningOutlook;
import org.raftgauge.batch.run.RunOutcome;
import org.raftgauge.batch.run.RunSummary;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.measure.PhotoStatus;

/** What the page says of the coming days, with and without a grader. */
class ForecastPageTest {
  @TempDir private Path folder;

  @Test
  void withAGraderTheTableHoldsWeightsAndTheSpreadOfHeadsIsDrawn() throws IOException {
    fit();
    String forecast = forecast(write());
    assertTrue(
        forecast.contains(">Weight</th>") && forecast.contains(">Leaf area, each plant whole</th>"),
        forecast);
    assertTrue(forecast.contains("not legal-for-trade weighing"), forecast);
    // The grader's health and how the one harvest would have been foretold.
    assertTrue(forecast.contains("How each grader stands"), forecast);
    assertTrue(forecast.contains("How earlier forecasts came out"), forecast);
    String plot = Files.readString(folder.resolve("run/plots/weights-K-0.svg"));
    assertTrue(plot.startsWith("<svg"), plot.substring(0, 40));
  }

  @Test
  void withoutAGraderTheTableHoldsLeafAreasAlone() throws IOException {
    String forecast = forecast(write());
    assertFalse(forecast.contains(">Weight</th>"), forecast);
    assertTrue(forecast.contains(">Leaf area, each plant whole</th>"), forecast);
    assertTrue(forecast.contains("to turn areas into weights"), forecast);
    assertFalse(Files.exists(folder.resolve("run/plots/weights-K-0.svg")));
  }

  @Test
  void theHeadsOfAllClassesAreTheHeadsThatStand() throws IOException {
    fit();
    EveningOutlook outlook = outlook();
    var raft = outlook.forecast().rafts().get(0);
    Ahead.Heads heads = HeadChart.of(raft, outlook.forecast(), Units.METRIC).orElseThrow();
    List<Double> y = heads.chart().series().get(0).y();
    double sum = 0;
    for (int i = 1; i < y.size() - 1; i += 2) {
      sum += y.get(i);
    }
    // Classes reach to 2.33 sd over the heaviest head: at most one head in a hundred is beyond.
    assertEquals(raft.heads(0), sum, 0.01 * raft.heads(0));
    assertTrue(heads.words().startsWith("This evening 8 heads, the middle one "), heads.words());
    assertTrue(heads.words().contains("under the minimum of 80 g"), heads.words());
  }

  private EveningOutlook outlook() throws IOException {
    Path book = folder.resolve("book");
    return new ForecastOfEvening(CropBook.read(book).book(), book)
        .from(GrownFarm.TONIGHT, Instant.MAX)
        .orElseThrow();
  }

  private void fit() throws IOException {
    importSites();
    assertEquals(0, run("grader", "fit", "--book", at("book"), "--crop", "batavia"));
    Path file = folder.resolve("book/graders/batavia.yaml");
    String dated = "fitted_at: \"" + GrownFarm.TONIGHT.minusDays(1) + "T12:00Z\"";
    Files.writeString(file, Files.readString(file).replaceFirst("(?m)^fitted_at: .*$", dated));
  }

  private void importSites() throws IOException {
    GrownFarm.write(folder);
    assertEquals(0, run("import", at("sites.csv"), "--book", at("book")));
  }

  private String write() throws IOException {
    if (!Files.exists(folder.resolve("sites.csv"))) {
      importSites();
    }
    Path run = Files.createDirectories(folder.resolve("run"));
    TreeMap<java.time.LocalDate, java.util.NavigableSet<String>> missing = new TreeMap<>();
    missing.put(GrownFarm.TONIGHT, new TreeSet<>());
    RunSummary summary =
        new RunSummary(
            run,
            new EnumMap<>(PhotoStatus.class),
            0,
            0,
            0,
            List.of(),
            missing,
            List.of(),
            List.of(),
            Optional.empty(),
            Optional.of(outlook()),
            List.of());
    RunOutcome outcome =
        new RunOutcome(
            List.of(), List.of(), Map.of(), summary, new RunOutcome.Stamp("0", "c0de", "b00c"));
    new RunPage(CropBook.read(folder.resolve("book")).book()).write(outcome, run);
    return Files.readString(run.resolve("report.html"));
  }

  private static String forecast(String page) {
    int start = page.indexOf("<section id=\"forecast\"");
    return page.substring(start, page.indexOf("</section>", start));
  }

  private String at(String name) {
    return folder.resolve(name).toString();
  }

  private static int run(String... call) {
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    return Raftgauge.run(call, new BookWorkplace(), new Console(nowhere, nowhere, false));
  }
}
