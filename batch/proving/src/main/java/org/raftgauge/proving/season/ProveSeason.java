// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.track.TrackRules;
import org.raftgauge.proving.verdict.Fault;
import org.raftgauge.proving.verdict.Plight;
import org.raftgauge.proving.verdict.ScoreVerdicts;
import org.raftgauge.proving.verdict.TrueSite;
import org.raftgauge.proving.verdict.VerdictScore;

/** Simulates seasons and scores the verdicts. */
public final class ProveSeason {
  private static final String SLOW_POND = "pond-3";
  private static final double LOST = 0.9;

  private final Map<String, SeasonPlan> plans = new LinkedHashMap<>();
  private final Path out;
  private final long seed;

  private ProveSeason(Path out, long seed, int rafts) {
    this.out = out;
    this.seed = seed;
    plans.put("summer", SeasonPlan.usual(rafts, false));
    plans.put("winter", SeasonPlan.usual(rafts, true));
    plans.put("slow-pond", SeasonPlan.usual(rafts, false).withPondFault());
    plans.put("bench-camera", SeasonPlan.usual(rafts, false).withCameraFault());
    plans.put("gantry-camera", SeasonPlan.usual(rafts, false).withGantryFault());
  }

  /**
   * Runs all seasons.
   *
   * @param out folder for books, measures and truth
   * @param seed of the first season
   * @param rafts rafts a season
   * @return scores by season
   * @throws IOException if a file cannot be written
   */
  public static Map<String, VerdictScore> run(Path out, long seed, int rafts) throws IOException {
    ProveSeason prove = new ProveSeason(out, seed, rafts);
    Map<String, VerdictScore> scores = new LinkedHashMap<>();
    for (String plan : prove.plans.keySet()) {
      scores.put(plan, prove.score(plan, TrackRules.defaults()));
    }
    return scores;
  }

  /**
   * Runs the seasons in which a rule matters with all rules, and with that rule switched off.
   *
   * @param out folder for books, measures and truth
   * @param seed of the first season
   * @param rafts rafts a season
   * @return scores by season and rule
   * @throws IOException if a file cannot be written
   */
  public static Map<String, VerdictScore> ablate(Path out, long seed, int rafts)
      throws IOException {
    ProveSeason prove = new ProveSeason(out, seed, rafts);
    Map<String, VerdictScore> scores = new LinkedHashMap<>();
    for (String plan : List.of("winter", "bench-camera")) {
      scores.put(plan + ", all rules", prove.score(plan, TrackRules.defaults()));
      for (TrackRules.Part part : TrackRules.Part.values()) {
        String name = plan + ", without " + part.name().toLowerCase(Locale.ROOT);
        scores.put(name.replace('_', ' '), prove.score(plan, TrackRules.defaults().without(part)));
      }
    }
    return scores;
  }

  private VerdictScore score(String name, TrackRules rules) throws IOException {
    SeasonPlan plan = plans.get(name);
    long at = seed + List.copyOf(plans.keySet()).indexOf(name);
    List<SeasonSite> sites = SimulateSeason.grow(plan, at);
    Path folder = out.resolve(name);
    SeasonFiles.write(folder, plan, sites);
    CropBook book = CropBook.read(folder.resolve("book")).book();
    return ScoreVerdicts.score(
        book, sites.stream().map(ProveSeason::truth).toList(), faults(plan, sites), rules);
  }

  private static List<Fault> faults(SeasonPlan plan, List<SeasonSite> sites) {
    List<Fault> faults = new ArrayList<>();
    if (plan.pondFault()) {
      faults.add(new Fault("pond", SLOW_POND, lost(sites)));
    }
    LocalDate fails = SeasonFiles.FIRST.plusDays(SeasonPlan.FAULT_DAY);
    if (plan.cameraFault()) {
      faults.add(new Fault("station", "bench-b", fails));
    }
    if (plan.gantryFault()) {
      faults.add(new Fault("station", "gantry", fails));
    }
    return faults;
  }

  /** Returns the first evening on which the plants of the slow pond have lost 10 %. */
  private static LocalDate lost(List<SeasonSite> sites) {
    Map<String, Double> before = new LinkedHashMap<>();
    Map<Integer, List<Double>> after = new TreeMap<>();
    for (SeasonSite s : sites) {
      boolean told = s.fate().kind() == Fate.Kind.HEALTHY && SeasonFiles.pond(s).equals(SLOW_POND);
      String key = s.raft() + s.site();
      if (told && s.day() == SeasonPlan.FAULT_DAY) {
        before.put(key, s.trueShare());
      }
    }
    for (SeasonSite s : sites) {
      Double was = before.get(s.raft() + s.site());
      if (was != null && s.day() > SeasonPlan.FAULT_DAY) {
        after.computeIfAbsent(s.day(), d -> new ArrayList<>()).add(s.trueShare() / was);
      }
    }
    return after.entrySet().stream()
        .filter(e -> e.getValue().stream().sorted().toList().get(e.getValue().size() / 2) <= LOST)
        .map(e -> SeasonFiles.FIRST.plusDays(e.getKey()))
        .findFirst()
        .orElseThrow();
  }

  private static TrueSite truth(SeasonSite s) {
    return new TrueSite(
        SeasonFiles.FIRST.plusDays(s.day()),
        s.raft() + "/" + s.site(),
        s.raft(),
        s.site(),
        s.dat(),
        plight(s.fate()),
        s.trueShare(),
        s.photographed() ? Optional.of(look(s)) : Optional.empty());
  }

  private static Plight plight(Fate fate) {
    OptionalDouble onset = OptionalDouble.of(fate.onsetDat());
    return switch (fate.kind()) {
      case HEALTHY -> Plight.healthy();
      case LAGS -> new Plight("lags", degree(fate.factor()), onset, false);
      case STALLS -> new Plight("stalls", "", onset, true);
      case DIES -> new Plight("dies", "", onset, true);
      case NEVER_EMERGES -> new Plight("never emerges", "", onset, true);
    };
  }

  private static String degree(double factor) {
    if (factor < 0.5) {
      return "growth at 35 to 50 %";
    }
    return factor < 0.7 ? "growth at 50 to 70 %" : "growth at 70 to 90 %";
  }

  static SiteLook look(SeasonSite s) {
    SiteMeasure measure =
        new SiteMeasure(
            s.site(),
            OptionalDouble.of(s.measuredCm2()),
            OptionalDouble.of(s.seCm2()),
            OptionalDouble.of(s.measuredCm2()),
            s.closed(),
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    return new SiteLook(
        s.station() + "-" + s.day(),
        s.station(),
        s.raft(),
        SeasonFiles.FIRST.plusDays(s.day()).atTime(18, 0).atOffset(ZoneOffset.UTC),
        measure);
  }
}
