// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.track.TrackRules;
import org.raftgauge.proving.verdict.Fault;
import org.raftgauge.proving.verdict.ScoreVerdicts;
import org.raftgauge.proving.verdict.TrueSite;
import org.raftgauge.proving.verdict.VerdictScore;

/** Simulates farm years and scores the verdicts with the rules as they are. */
public final class FarmYear {
  private FarmYear() {}

  /**
   * Runs a year without and one with faults of a pond and a camera.
   *
   * @param out folder for the crop books
   * @param seed of the first
   * @param rafts rafts a year
   * @return scores by year
   * @throws IOException if a file cannot be written
   */
  public static Map<String, VerdictScore> run(Path out, long seed, int rafts) throws IOException {
    Map<String, YearPlan> plans = new LinkedHashMap<>();
    plans.put("second generator", new YearPlan(rafts, false, false));
    plans.put("second generator, slow pond", new YearPlan(rafts, true, false));
    plans.put("second generator, dim camera", new YearPlan(rafts, false, true));
    Map<String, VerdictScore> scores = new LinkedHashMap<>();
    long next = seed;
    for (Map.Entry<String, YearPlan> plan : plans.entrySet()) {
      GrowFarm farm = new GrowFarm(plan.getValue(), next++);
      List<TrueSite> sites = farm.grow();
      Path folder = out.resolve(plan.getKey().replaceAll("\\W+", "-"));
      CropBook book = FarmBook.write(folder, farm);
      scores.put(
          plan.getKey(),
          ScoreVerdicts.score(book, sites, faults(plan.getValue(), farm), TrackRules.defaults()));
    }
    return scores;
  }

  private static List<Fault> faults(YearPlan plan, GrowFarm farm) {
    LocalDate fails = GrowFarm.FIRST.plusDays(YearPlan.FAILS);
    List<Fault> faults = new ArrayList<>();
    if (plan.slowPond()) {
      faults.add(new Fault("pond", YearPlan.SLOW_POND, farm.tenPercentLostOn()));
    }
    if (plan.dimCamera()) {
      faults.add(new Fault("station", YearPlan.DIM_CAMERA, fails));
    }
    return faults;
  }
}
