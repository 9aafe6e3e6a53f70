// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.proving.farmyear.GrowFarm.Stand;
import org.raftgauge.proving.verdict.TrueSite;

/** What the photos of a farm year say, and what is true. */
final class FarmPhotos {
  private static final double CELL_CM2 = 380;

  private final YearPlan plan;
  private final SplittableRandom draw;

  /**
   * @param plan of the year
   * @param draw the farm's dice
   */
  FarmPhotos(YearPlan plan, SplittableRandom draw) {
    this.plan = plan;
    this.draw = draw;
  }

  /**
   * Takes an evening's photos.
   *
   * @param day the day
   * @param stands plants by raft and site
   * @return every plant with its truth
   */
  List<TrueSite> evening(int day, Stand[][] stands) {
    List<TrueSite> truth = new ArrayList<>();
    Map<String, List<Double>> healthy = new HashMap<>();
    for (int raft = 0; raft < plan.rafts(); raft++) {
      for (int site = 0; site < GrowFarm.PER_RAFT && GrowFarm.grows(raft, day); site++) {
        Stand stand = stands[raft][site];
        boolean sound = stand.plant().plight().kind().equals("healthy");
        boolean fed = !plan.slowPond() || !GrowFarm.pond(raft).equals(YearPlan.SLOW_POND);
        if (sound && fed) {
          healthy
              .computeIfAbsent(cohort(stand), c -> new ArrayList<>())
              .add(stand.plant().areaCm2());
        }
      }
    }
    for (int raft = 0; raft < plan.rafts(); raft++) {
      if (GrowFarm.grows(raft, day)) {
        truth.addAll(photograph(raft, day, stands[raft], healthy));
      }
    }
    return truth;
  }

  private static String cohort(Stand stand) {
    return stand.from() + (stand.cuts() > 0 ? "c" : "");
  }

  private List<TrueSite> photograph(
      int raft, int day, Stand[] stands, Map<String, List<Double>> healthy) {
    List<TrueSite> truth = new ArrayList<>();
    boolean taken = draw.nextDouble() >= YearPlan.MISSING;
    double factor = draw.nextDouble() < 0.02 ? draw.nextDouble(0.65, 0.8) : 1;
    if (plan.dimCamera()
        && day >= YearPlan.FAILS
        && GrowFarm.camera(raft).equals(YearPlan.DIM_CAMERA)) {
      factor *= 0.85;
    }
    for (int site = 0; site < GrowFarm.PER_RAFT; site++) {
      Stand stand = stands[site];
      double area = stand.plant().areaCm2();
      List<Double> others = healthy.getOrDefault(cohort(stand), List.of());
      // A few plants make no median; then the curve that all follow is the truth.
      double usual = others.size() < 30 ? stand.plant().usualCm2() : median(others);
      SiteLook look = look(raft, site, day, measured(stand.plant(), area * factor));
      truth.add(
          new TrueSite(
              GrowFarm.FIRST.plusDays(day),
              stand.name(),
              GrowFarm.raft(raft),
              GrowFarm.site(site),
              stand.dat(day),
              stand.plant().plight(),
              area / usual,
              taken ? Optional.of(look) : Optional.empty()));
    }
    return truth;
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  /** Measures with noise of long tails: a Laplace of 3 %, and a rim of 0.2 cm2. */
  private double measured(Lettuce plant, double area) {
    double u = draw.nextDouble() - 0.5;
    double noise = -0.03 / Math.sqrt(2) * Math.signum(u) * Math.log(1 - 2 * Math.abs(u));
    double rim = 0.4 * (draw.nextDouble() - 0.5);
    double seen = Math.min(area, CELL_CM2) * plant.bias() * Math.exp(noise) + rim;
    return area > 0.4 && seen > 0.4 ? seen : 0;
  }

  private static SiteLook look(int raft, int site, int day, double seen) {
    SiteMeasure measure =
        new SiteMeasure(
            GrowFarm.site(site),
            OptionalDouble.of(seen),
            OptionalDouble.of(0.15 + 0.03 * seen),
            OptionalDouble.of(seen),
            seen > 0.85 * CELL_CM2,
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    return new SiteLook(
        GrowFarm.raft(raft) + "-" + day,
        GrowFarm.camera(raft),
        GrowFarm.raft(raft),
        GrowFarm.FIRST.plusDays(day).atTime(18, 0).atOffset(ZoneOffset.UTC),
        measure);
  }
}
