// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.proving.plant.Habit;

/**
 * A simulated season whose photos are rendered, run through the program as a grower would: photo
 * folder, grader, forecast.
 */
final class RenderedSeason {
  private static final int EVENING = SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD;

  /**
   * A season of the page.
   *
   * @param code names its folder
   * @param words name it
   * @param bench where it is photographed
   * @param number added to the seed
   * @param closes whether leaves close over the board before harvest
   */
  record Kind(String code, String words, SeasonBench bench, int number, boolean closes) {}

  static final List<Kind> KINDS =
      List.of(
          new Kind("open", "butterhead, apart", new SeasonBench(Habit.BUTTERHEAD, 260), 0, false),
          new Kind("lobed", "oak-leaf, apart", new SeasonBench(Habit.OAKLEAF, 260), 1, false),
          new Kind(
              "closing", "butterhead, closing", new SeasonBench(Habit.BUTTERHEAD, 180), 2, true));

  final Kind kind;
  final HarvestScore simulated = new HarvestScore();
  final List<Double> errors = new ArrayList<>();
  final List<Double> areaErrors = new ArrayList<>();
  final List<Integer> readyOff = new ArrayList<>();
  int photos;
  int inside80;
  int closedTonight;
  int sitesTonight;

  private RenderedSeason(Kind kind) {
    this.kind = kind;
  }

  /** Grows, photographs, measures, fits and forecasts a season; photos in the folder stay. */
  static RenderedSeason of(Kind kind, long seed, Path work) throws IOException {
    RenderedSeason scored = new RenderedSeason(kind);
    SeasonSetting setting = SeasonSetting.photographed(kind.closes());
    Season season = new Season(setting, seed + kind.number());
    Path folder = Files.createDirectories(work.resolve(kind.code() + "-" + seed));
    Path photos = folder.resolve("photos");
    scored.photos = new PhotographSeason(kind.bench(), seed).into(photos, season);
    Path run = Files.createTempDirectory(folder, "run-");
    Path book = run.resolve("book");
    SeasonBook.of(season, kind.bench().place(seed), book);
    call(
        "run",
        photos.toString(),
        "--book",
        book.toString(),
        "--out",
        run + "/run",
        "--no-overlays");
    call("grader", "fit", "--book", book.toString(), "--crop", "batavia");
    fitThen(book.resolve("graders/batavia.yaml"));
    LocalDate tonight = Season.TONIGHTS.plusDays(EVENING);
    call(
        "forecast", "--book", book.toString(), "--on", tonight.toString(), "--out", run + "/ahead");
    scored.areas(season, rows(run.resolve("run/sites.csv")));
    scored.totals(season, rows(run.resolve("ahead/forecast.csv")));
    scored.simulated.season(season, run.resolve("unseen"));
    return scored;
  }

  /** Dates the grader as fitted on the season's first day: one of today knows too much for it. */
  private static void fitThen(Path grader) throws IOException {
    String then = "fitted_at: \"" + Season.TONIGHTS + "T08:00Z\"";
    String text = Files.readString(grader);
    Files.writeString(grader, text.replaceFirst("fitted_at: \"[^\"]*\"", then));
  }

  private static void call(String... words) throws IOException {
    int code = Raftgauge.run(words, new BookWorkplace(), Console.system());
    if (code != 0) {
      throw new IOException(String.join(" ", words) + " ended with exit code " + code);
    }
  }

  private static List<CSVRecord> rows(Path file) throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
      return parser.getRecords();
    }
  }

  /** Holds the measured areas of open sites against the sizes at which the plants were grown. */
  private void areas(Season season, List<CSVRecord> sites) {
    Map<String, Plant> plants = new HashMap<>();
    season.past.forEach(cycle -> cycle.forEach(p -> plants.put(p.raft + p.site, p)));
    season.now.forEach(p -> plants.put(p.raft + p.site, p));
    for (CSVRecord site : sites) {
      int dat = (int) Math.floor(Double.parseDouble(site.get("dat")));
      Plant plant = plants.get(site.get("raft") + site.get("site"));
      boolean closed = site.get("closed").equals("true");
      if (site.get("raft").startsWith("N-") && dat == EVENING) {
        sitesTonight++;
        closedTonight += closed ? 1 : 0;
      }
      String area = site.get("projected_area_cm2");
      if (!closed && !area.isEmpty() && plant.standsOn(dat)) {
        areaErrors.add(Math.abs(Double.parseDouble(area) / Math.exp(plant.lnArea[dat]) - 1));
      }
    }
  }

  private void totals(Season season, List<CSVRecord> rows) throws IOException {
    LocalDate day = Season.TONIGHTS.plusDays(SeasonSetting.HARVEST_DAT);
    for (CSVRecord row : rows) {
      if (row.get("scope").equals("raft") && row.get("date").equals(day.toString())) {
        List<Plant> plants =
            season.now.stream().filter(p -> p.raft.equals(row.get("raft"))).toList();
        total(season, plants, row);
      }
    }
    if (errors.size() != season.setting.rafts()) {
      throw new IOException("forecast.csv tells of " + errors.size() + " rafts");
    }
  }

  private void total(Season season, List<Plant> plants, CSVRecord row) {
    int dat = SeasonSetting.HARVEST_DAT;
    double truth =
        plants.stream().filter(p -> p.standsOn(dat)).mapToDouble(p -> season.weightG(p, dat)).sum();
    errors.add(grams(row, "total_weight_g") / truth - 1);
    boolean inside =
        truth >= grams(row, "total_weight_lo80_g") && truth <= grams(row, "total_weight_hi80_g");
    inside80 += inside ? 1 : 0;
    String ready = row.get("ready_on");
    long told =
        ready.isEmpty()
            ? HarvestScore.HORIZON
            : ChronoUnit.DAYS.between(Season.TONIGHTS.plusDays(EVENING), LocalDate.parse(ready));
    readyOff.add((int) (told - HarvestScore.trueReadyDay(season, plants)));
  }

  private static double grams(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
