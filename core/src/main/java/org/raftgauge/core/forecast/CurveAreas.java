// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;

/**
 * Tells the area that each plant's curve from before closure gives for an evening, as forecasts
 * take it: a grader of closed plants is to be fitted on these, so that both err alike.
 */
public final class CurveAreas {
  private CurveAreas() {}

  /**
   * Tells.
   *
   * @param book the crop book; what it says of later days is left out
   * @param looks what photos that count said; later ones are left out
   * @param evening the farm's day
   * @return cm2, by plant; plants without a curve or found bare are missing
   */
  public static Map<String, Double> on(CropBook book, List<SiteLook> looks, LocalDate evening) {
    CropBook known = BookAsOf.of(book, evening);
    List<PlantSeries> series = CollectSeries.upTo(known, looks, evening);
    List<SiteLook> before =
        looks.stream()
            .filter(l -> !known.farmDay().evening(l.takenAt().toInstant()).isAfter(evening))
            .toList();
    FinishedCycles past =
        FinishedCycles.of(known, before, CohortRule.defaults(), new FinishedCycles.Memory());
    Asked asked = new Asked(evening, ForecastRule.defaults());
    Map<String, Double> areas = new TreeMap<>();
    Outlooks.of(known, series, new Outlooks.Past(past, Map.of()), asked)
        .plants()
        .forEach(p -> areas.put(p.plant(), Math.exp(p.days().get(0).lnArea())));
    return areas;
  }
}
