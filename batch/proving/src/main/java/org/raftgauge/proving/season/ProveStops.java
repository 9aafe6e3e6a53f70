// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.TrackRules;
import org.raftgauge.core.track.Verdict;

/**
 * Seasons in which the growth of a whole farm falls at once, so that no pond can be held against
 * another, and seasons in which it does not: how many evenings it takes until a pond is named, and
 * how many ponds are named for nothing. Each station's photos of an evening err together by 2.5 %.
 */
public final class ProveStops {
  private static final double PHOTO_SD = 0.025;
  private static final int RAFTS = 96;
  private static final int DAYS_AFTER = 12;
  private static final int NEVER = 999;

  private final Path out;
  private final long seed;
  private final int seasons;

  private ProveStops(Path out, long seed, int seasons) {
    this.out = out;
    this.seed = seed;
    this.seasons = seasons;
  }

  /**
   * Runs the seasons.
   *
   * @param out folder for books and measures
   * @param seed of the first season
   * @param seasons of each kind
   * @return a table, as Markdown
   * @throws IOException if a file cannot be written
   */
  public static String run(Path out, long seed, int seasons) throws IOException {
    ProveStops prove = new ProveStops(out, seed, seasons);
    StringBuilder table =
        new StringBuilder(
            "| season | growth of all plants from day 16 on | ponds | named within 3, 5, 8, 12"
                + " evenings | evenings to the call: median, 90th | called stalled |\n"
                + "| --- | ---: | ---: | ---: | ---: | ---: |\n");
    for (boolean winter : List.of(false, true)) {
      for (double growth : List.of(-0.5, 0.0, 0.3, 0.5, 0.67)) {
        table.append(prove.stops(winter, growth));
      }
    }
    return table + "\n" + prove.sound();
  }

  private String stops(boolean winter, double growth) throws IOException {
    List<Integer> days = new ArrayList<>();
    int stalled = 0;
    for (int season = 0; season < seasons; season++) {
      Judge judge = new Judge(winter, growth, season);
      Map<String, Integer> first = new HashMap<>();
      Map<String, Integer> stopped = new HashMap<>();
      for (int after = 1; after <= DAYS_AFTER; after++) {
        for (Judged row : judge.ponds(SeasonPlan.FAULT_DAY + after)) {
          if (!row.verdict().isCalm()) {
            first.putIfAbsent(row.place().pond(), after);
          }
          if (row.verdict() == Verdict.STALLED) {
            stopped.putIfAbsent(row.place().pond(), after);
          }
        }
      }
      stalled += stopped.size();
      days.addAll(first.values());
    }
    int ponds = SimulateSeason.PONDS * seasons;
    days.addAll(Collections.nCopies(ponds - days.size(), NEVER));
    Collections.sort(days);
    return String.format(
        Locale.ROOT,
        "| %s | %.0f %% | %d | %s, %s, %s, %s | %s, %s | %d |\n",
        winter ? "winter" : "summer",
        100 * growth,
        ponds,
        within(days, 3),
        within(days, 5),
        within(days, 8),
        within(days, DAYS_AFTER),
        word(days.get(ponds / 2)),
        word(days.get(ponds * 9 / 10)),
        stalled);
  }

  private static String within(List<Integer> days, int most) {
    return String.valueOf(days.stream().filter(d -> d <= most).count());
  }

  private static String word(int days) {
    return days == NEVER ? "not" : String.valueOf(days);
  }

  /** Counts ponds that are named though nothing befalls the farm, with and without the growth. */
  private String sound() throws IOException {
    TrackRules without = TrackRules.defaults().without(TrackRules.Part.POND_GROWTH);
    int rows = 0;
    int named = 0;
    int otherwise = 0;
    for (int season = 0; season < 2 * seasons; season++) {
      Judge judge = new Judge(season % 2 == 1, 1, season / 2);
      for (int day = 0; day < SimulateSeason.days(judge.plan); day++) {
        List<Judged> ponds = judge.ponds(day);
        rows += ponds.size();
        named += amiss(ponds);
        otherwise += amiss(judge.ponds(day, without));
      }
    }
    return String.format(
        Locale.ROOT,
        "Seed %d, %d sound seasons: %d of %d pond-evenings named, %d of them for their own growth"
            + " alone (%.1f in 1,000).%n",
        seed,
        2 * seasons,
        named,
        rows,
        named - otherwise,
        1000.0 * (named - otherwise) / rows);
  }

  private static int amiss(List<Judged> ponds) {
    return (int) ponds.stream().filter(row -> !row.verdict().isCalm()).count();
  }

  /** A simulated season with its book. */
  private final class Judge {
    private final SeasonPlan plan;
    private final CropBook book;
    private final List<SiteLook> looks;

    Judge(boolean winter, double growth, int season) throws IOException {
      plan = SeasonPlan.usual(RAFTS, winter).withFarm(new SeasonPlan.Farm(growth, PHOTO_SD));
      List<SeasonSite> sites = SimulateSeason.grow(plan, seed + 100L * season);
      Path folder = out.resolve("stops");
      SeasonFiles.write(folder, plan, sites);
      book = CropBook.read(folder.resolve("book")).book();
      looks = sites.stream().filter(SeasonSite::photographed).map(ProveSeason::look).toList();
    }

    List<Judged> ponds(int day) {
      return ponds(day, TrackRules.defaults());
    }

    List<Judged> ponds(int day, TrackRules rules) {
      LocalDate evening = SeasonFiles.FIRST.plusDays(day);
      return JudgeEvening.judge(book, CollectSeries.withEnded(book, looks, evening), evening, rules)
          .stream()
          .filter(row -> row.scope() == Judged.Scope.POND)
          .toList();
    }
  }
}
