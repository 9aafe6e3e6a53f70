// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.forecast.CurveAreas;
import org.raftgauge.core.forecast.HarvestLessons;
import org.raftgauge.core.grader.FitGrader;
import org.raftgauge.core.grader.FitRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderResult;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.grader.Weighed;

/** Weighs some plants of a season's latest past cycle and fits its grader. */
final class SeasonGrader {
  private static final Grader.Origin ORIGIN =
      new Grader.Origin(
          "2026-03-31T20:00Z",
          "proving",
          "whole",
          "2026-03-10T12:00Z",
          "2026-03-25T12:00Z",
          24,
          "simulated");

  private SeasonGrader() {}

  /** Fits; picks are spread over the days of the harvest range, as many on each. */
  static GraderResult fit(Season season, CropBook book) {
    List<Weighed> weighed = new ArrayList<>();
    Map<Integer, Map<String, Double>> curves = new HashMap<>();
    for (Season.Pick pick : season.picks) {
      boolean closed = pick.plant().closed(season.setting, pick.dat());
      Map<String, Double> areas =
          closed
              ? curves.computeIfAbsent(
                  pick.dat(), d -> CurveAreas.on(book, season.looks, Season.starts(0).plusDays(d)))
              : Map.of();
      weighed.add(weighed(season, pick.plant(), pick.dat(), areas));
    }
    FitRule rule = new FitRule(Set.of(Size.AREA), Set.of(Size.CURVE), FitRule.FEWEST);
    GraderResult fitted = FitGrader.fit("batavia", weighed, rule, ORIGIN);
    return fitted instanceof Grader grader
        ? HarvestLessons.teach(book, season.looks, grader)
        : fitted;
  }

  private static Weighed weighed(Season season, Plant plant, int dat, Map<String, Double> curves) {
    String id = plant.raft + "/" + plant.site + "/" + Season.starts(0);
    Double curve = curves.get(id);
    Traits traits =
        new Traits(
            "",
            OptionalDouble.of(season.measuredCm2(plant, dat)),
            OptionalDouble.empty(),
            curve == null ? OptionalDouble.empty() : OptionalDouble.of(curve));
    return new Weighed(
        dat,
        plant.raft,
        plant.site,
        OffsetDateTime.parse("2026-03-20T12:00Z"),
        season.weightG(plant, dat),
        traits,
        Regime.of(plant.closed(season.setting, dat)),
        "simulated");
  }
}
