// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.CohortFit;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Spread;
import org.raftgauge.core.track.Verdict;

/** Collects what is to be drawn of rafts, cohort by cohort. */
final class DrawnGrowth {
  private static final int STEPS = 40;

  private final Tonight tonight;
  private final Map<String, Verdict> verdicts = new HashMap<>();
  private final List<RaftGrowth> rafts = new ArrayList<>();

  DrawnGrowth(Tonight tonight) {
    this.tonight = tonight;
    for (Judged row : tonight.verdicts()) {
      if (row.scope() == Judged.Scope.SITE) {
        verdicts.put(row.place().plant(), row.verdict());
      }
    }
  }

  /** Takes a cohort's plants and curve; the rafts are drawn up side by side. */
  void cohort(List<PlantSeries> plants, CohortFit fit, Spread spread) {
    List<RaftGrowth.Reference> reference =
        fit instanceof CohortCurve curve ? reference(plants, curve) : List.of();
    Map<String, List<PlantSeries>> on = new TreeMap<>();
    plants.forEach(p -> on.computeIfAbsent(p.planting().raft(), r -> new ArrayList<>()).add(p));
    rafts.addAll(spread.map(List.copyOf(on.values()), raft -> raft(raft, reference)));
  }

  private List<RaftGrowth.Reference> reference(List<PlantSeries> plants, CohortCurve curve) {
    Crop.Limits limits =
        tonight
            .book()
            .crop(plants.get(0).planting())
            .map(Crop::limits)
            .orElse(Crop.Limits.defaults());
    double first =
        plants.stream().mapToDouble(p -> p.sights().get(0).ageDays()).min().orElseThrow();
    double last = plants.stream().mapToDouble(p -> p.last().ageDays()).max().orElseThrow();
    List<RaftGrowth.Reference> days = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double dat = first + (last - first) * i / STEPS;
      double median = Math.exp(curve.typicalLnArea(dat).mean());
      days.add(
          new RaftGrowth.Reference(
              dat, median, median * limits.laggingShare(), median * limits.aheadShare()));
    }
    return days;
  }

  private RaftGrowth raft(List<PlantSeries> plants, List<RaftGrowth.Reference> reference) {
    PlantSeries any = plants.get(0);
    return new RaftGrowth(
        any.planting().pond(),
        any.planting().raft(),
        any.planting().crop(),
        any.clock(),
        plants.stream()
            .sorted(Comparator.comparing(PlantSeries::site))
            .map(
                p ->
                    new RaftGrowth.OfSite(
                        p.site(), Optional.ofNullable(verdicts.get(p.plant())), points(p)))
            .toList(),
        reference);
  }

  private static List<RaftGrowth.Point> points(PlantSeries plant) {
    return plant.sights().stream()
        .filter(Sight::hasArea)
        .map(s -> new RaftGrowth.Point(s.ageDays(), s.areaCm2()))
        .toList();
  }

  /** Returns the rafts, by name, those that hold several cohorts several times. */
  List<RaftGrowth> rafts() {
    return rafts.stream().sorted(Comparator.comparing(RaftGrowth::raft)).toList();
  }
}
