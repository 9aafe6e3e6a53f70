// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.track.TrackRules;

/** Simulates seasons and scores the verdicts. */
public final class ProveSeason {

  private ProveSeason() {}

  /**
   * Runs all seasons.
   *
   * @param out folder for books, measures and truth
   * @param seed of the first season
   * @param rafts rafts a season
   * @param say gets lines of text
   * @throws IOException if a file cannot be written
   */
  public static void run(Path out, long seed, int rafts, Consumer<String> say) throws IOException {
    Map<String, SeasonPlan> plans = new LinkedHashMap<>();
    plans.put("summer", SeasonPlan.usual(rafts, false));
    plans.put("winter", SeasonPlan.usual(rafts, true));
    plans.put("slow-pond", SeasonPlan.usual(rafts, false).withPondFault());
    plans.put("bench-camera", SeasonPlan.usual(rafts, false).withCameraFault());
    plans.put("gantry-camera", SeasonPlan.usual(rafts, false).withGantryFault());
    long next = seed;
    for (Map.Entry<String, SeasonPlan> plan : plans.entrySet()) {
      List<SeasonSite> sites = SimulateSeason.grow(plan.getValue(), next++);
      Path folder = out.resolve(plan.getKey());
      SeasonFiles.write(folder, plan.getValue(), sites);
      BookReading book = CropBook.read(folder.resolve("book"));
      SeasonScore score = new ScoreSeason(book.book(), sites, TrackRules.defaults()).score();
      print(plan.getKey(), score, say);
    }
  }

  private static void print(String name, SeasonScore s, Consumer<String> say) {
    int small = s.small.values().stream().mapToInt(i -> i).sum();
    int called = s.smallCalled.values().stream().mapToInt(i -> i).sum();
    say.accept(
        String.format(
            Locale.ROOT,
            "%s: small sites called %d of %d (%.2f %%; %d closed), false flags %d of %d (%.2f per 1000), stalls %d"
                + " of %d",
            name,
            called,
            small,
            100.0 * called / small,
            s.smallClosed,
            s.falseFlags,
            s.healthyDays,
            1000.0 * s.falseFlags / s.healthyDays,
            s.stallsCalled,
            s.stalls));
    say.accept("  by fate " + s.small + " called " + s.smallCalled + " false " + s.falseWhere);
    s.missed.stream().limit(6).forEach(m -> say.accept("  missed " + m));
    s.groups.forEach(
        (evening, named) -> {
          var set = new java.util.TreeSet<>(named);
          set.removeIf(n -> n.startsWith("raft"));
          if (!set.isEmpty() && evening.toEpochDay() % 3 == 0
              || evening.getDayOfMonth() > 18 && evening.getMonthValue() == 4 && !set.isEmpty()) {
            say.accept("  " + evening + " " + set);
          }
        });
  }
}
