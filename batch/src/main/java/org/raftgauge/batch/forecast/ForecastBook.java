// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.forecast;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.batch.run.KnownLooks;
import org.raftgauge.batch.run.OutlookFiles;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.forecast.Asked;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.ForecastEvening;
import org.raftgauge.core.forecast.ForecastRule;
import org.raftgauge.core.forecast.HarvestPlan;
import org.raftgauge.core.forecast.LookBack;
import org.raftgauge.core.forecast.LookBackRow;
import org.raftgauge.core.forecast.LookBackScore;
import org.raftgauge.core.forecast.PlanRow;
import org.raftgauge.core.forecast.Resources;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.report.LookBackTable;
import org.raftgauge.core.report.PlanTable;
import org.raftgauge.core.report.ResourcesTable;

/** Forecasts from a book's history alone, and replays what was forecast. */
public final class ForecastBook {
  private static final int MOST_REMARKS = 8;

  private final CropBook book;
  private final Path folder;

  /**
   * Wraps a book.
   *
   * @param book the crop book as read
   * @param folder of the book
   */
  public ForecastBook(CropBook book, Path folder) {
    this.book = book;
    this.folder = folder;
  }

  /**
   * Forecasts and writes {@code forecast.csv}, {@code supply.csv}, {@code plan-totals.csv} and,
   * where no plan is given, {@code plan.csv} as a proposal, and the same as {@code
   * plan-proposed.csv}, which tells the next evening whether the plan was edited.
   *
   * @param on the evening
   * @param days coming days
   * @param plan the grower's plan, where there is one
   * @param out folder to write to
   * @return what to say, line by line
   * @throws InputException if there is nothing to forecast from, the plan is wrong, or a proposal
   *     would take the place of another plan
   * @throws IOException if a file cannot be read or written
   */
  public List<String> forecast(LocalDate on, int days, Optional<Path> plan, Path out)
      throws InputException, IOException {
    CropBook known = BookAsOf.of(book, on);
    List<SiteLook> looks =
        BookLooks.between(
            known,
            folder,
            new BookLooks.Evenings(
                ForecastEvening.firstDay(known, on), on, known.farmDay().start(on.plusDays(1))));
    Asked asked = new Asked(on, ForecastRule.defaults().withDays(days));
    KnownGraders graders = KnownGraders.of(known, folder).orFail();
    EveningForecast forecast = ForecastEvening.of(known, looks, graders.by(known, on), asked);
    if (forecast.rafts().isEmpty()) {
      List<String> why = new ArrayList<>(forecast.remarks());
      why.remove(EveningForecast.CAUTION);
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + folder,
                  "nothing can be forecast on "
                      + on
                      + (why.isEmpty() ? "" : ": " + String.join("; ", why)),
                  "run raftgauge over more photos, or give another --on")));
    }
    List<PlanRow> rows =
        plan.isPresent() ? ReadPlan.of(plan.get(), forecast) : HarvestPlan.propose(forecast);
    Path proposal = out.resolve("plan.csv");
    Path untouched = out.resolve("plan-proposed.csv");
    if (plan.isEmpty()) {
      keepEdited(proposal, untouched);
    }
    Files.createDirectories(out);
    OutlookFiles.write(out, forecast, rows);
    List<String> lines = new ArrayList<>();
    lines.add(rafts(forecast) + ": " + out.resolve("forecast.csv"));
    lines.add("By crop and day: " + out.resolve("supply.csv"));
    if (plan.isEmpty()) {
      write(untouched, PlanTable.plan(rows));
      write(proposal, PlanTable.plan(rows));
      lines.add("A plan to edit: " + proposal);
    }
    lines.add("What the plan yields: " + out.resolve("plan-totals.csv"));
    lines.addAll(told(graders.remarks(known, forecast), out));
    return lines;
  }

  /** Refuses to write a plan over one that is not as an earlier evening proposed it. */
  private static void keepEdited(Path plan, Path proposed) throws InputException, IOException {
    boolean asProposed = Files.exists(proposed) && Files.mismatch(plan, proposed) == -1;
    if (Files.exists(plan) && !asProposed) {
      throw new InputException(
          List.of(
              new Problem(
                  "OUT " + plan,
                  "is there already and may hold your work",
                  "give it with --plan, name another folder, or move it away")));
    }
  }

  private static String rafts(EveningForecast forecast) {
    int rafts = forecast.rafts().size();
    return rafts == 1 ? "1 raft" : rafts + " rafts";
  }

  /** Writes all remarks to a file and returns those that fit a screen. */
  private static List<String> told(List<String> remarks, Path out) throws IOException {
    Path file = OutlookFiles.remarks(out, remarks);
    if (remarks.size() <= MOST_REMARKS) {
      return remarks;
    }
    List<String> told = new ArrayList<>(remarks.subList(0, MOST_REMARKS));
    told.add("... and " + (remarks.size() - MOST_REMARKS) + " more in " + file);
    return told;
  }

  /**
   * Replays past harvests and writes {@code look-back.csv}, {@code look-back-summary.csv} and,
   * where climate.csv tells light or water, {@code resources.csv}.
   *
   * @param out folder to write to
   * @return what to say, line by line
   * @throws InputException if there is nothing to replay
   * @throws IOException if a file cannot be read or written
   */
  public List<String> lookBack(Path out) throws InputException, IOException {
    KnownLooks looks =
        new KnownLooks(
            BookLooks.corrections(folder),
            book.farmDay(),
            by -> BookLooks.between(book, folder, BookLooks.Evenings.all().correctedBy(by)));
    Map<String, Grader> graders = KnownGraders.of(book, folder).orFail().graders();
    List<LookBackRow> rows = LookBack.of(book, looks, graders, LookBack.Leads.defaults());
    List<Resources> resources = Resources.of(book);
    if (rows.isEmpty() && resources.isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + folder,
                  "no harvest could be replayed",
                  "it takes rows in harvests.csv, photos of those rafts in the history before, and"
                      + " a grader")));
    }
    List<LookBackScore> scores = LookBackScore.of(rows);
    Files.createDirectories(out);
    write(out.resolve("look-back.csv"), LookBackTable.rows(rows));
    write(out.resolve("look-back-summary.csv"), LookBackTable.summary(scores));
    write(out.resolve("resources.csv"), ResourcesTable.of(resources));
    List<String> lines = new ArrayList<>();
    scores.forEach(s -> lines.add(s.words()));
    lines.add("Each forecast: " + out.resolve("look-back.csv"));
    lines.add(EveningForecast.CAUTION);
    return lines;
  }

  private static void write(Path file, String text) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    Files.writeString(fresh, text, StandardCharsets.UTF_8);
    Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
  }
}
