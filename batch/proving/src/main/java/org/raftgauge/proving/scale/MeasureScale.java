// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.run.JudgeHistory;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.ForecastTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;

/** Makes a big farm and times the analysis of its last evening. */
final class MeasureScale {
  /** The step that works out an evening. */
  static final String JUDGE = "judge";

  /** The step that works out one more evening in a process that runs on. */
  static final String AGAIN = "judge again";

  private MeasureScale() {}

  /**
   * What was measured.
   *
   * @param sites that stand
   * @param laps by what was done
   */
  record Result(int sites, Map<String, Lap> laps) {}

  /**
   * Measures.
   *
   * @param sites wanted
   * @param seed of the farm
   * @param work folder for book and results; a farm of the same size and seed is used again
   * @return times
   * @throws IOException if a file cannot be written
   */
  static Result of(int sites, long seed, Path work) throws IOException {
    BigFarm farm = new BigFarm(sites, seed);
    Path book = work.resolve("farm-" + farm.sites() + "-" + seed);
    if (!Files.exists(book.resolve("done"))) {
      farm.write(book);
      farm.writeLastEvening(book);
      Files.writeString(book.resolve("done"), "");
    }
    Map<String, Lap> laps = new LinkedHashMap<>();
    try {
      Workplace.OpenBook open = timed(laps, "book read", () -> opened(book));
      try (History history = History.open(book.resolve("history.db"))) {
        measure(history, open, laps);
      }
    } catch (IllegalStateException e) {
      throw new IOException(e.getMessage(), e);
    }
    return new Result(farm.sites(), laps);
  }

  private static void measure(History history, Workplace.OpenBook open, Map<String, Lap> laps)
      throws IOException {
    JudgeHistory.Judgement judged =
        timed(laps, JUDGE, () -> judged(history, open, BigFarm.evening()));
    timed(laps, "tables", () -> tables(judged));
    timed(laps, AGAIN, () -> judged(history, open, BigFarm.evening().minusDays(1)));
  }

  /** Works an evening out from what is read of the history then. */
  private static JudgeHistory.Judgement judged(
      History history, Workplace.OpenBook open, LocalDate evening) throws IOException {
    Measures measures = history.measures();
    JudgeHistory.Asked asked = new JudgeHistory.Asked(evening, Instant.MAX);
    return JudgeHistory.of(measures, open.farm(), asked, open.forecasts());
  }

  private static Workplace.OpenBook opened(Path book) {
    try {
      return new BookWorkplace().open(book);
    } catch (InputException e) {
      throw new IllegalStateException(e.getMessage(), e);
    }
  }

  private static long tables(JudgeHistory.Judgement judged) {
    return VerdictsTable.csv(judged.result().verdicts()).length()
        + CurvesTable.csv(judged.result().curves()).length()
        + WorklistTable.csv(judged.result().worklist()).length()
        + (long) ForecastTable.of(judged.outlook().orElseThrow().forecast().rows()).length();
  }

  private static <T> T timed(Map<String, Lap> laps, String what, Lap.Work<T> work)
      throws IOException {
    Lap.Timed<T> timed = Lap.of(work);
    laps.put(what, timed.lap());
    System.err.println(what + " " + timed.lap());
    return timed.result();
  }
}
