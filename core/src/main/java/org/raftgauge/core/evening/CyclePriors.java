// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortPrior;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;

/**
 * What past cycles tell of the curve of a cohort before its own photos do. A cohort is past when no
 * plant of it stands any more; the latest of the same crop, variety, layout and clock count.
 */
final class CyclePriors {
  private static final int MOST_CYCLES = 5;
  private static final int MOST_PLANTS = 30;

  /** Photos from which a past plant's series tells a curve; working value. */
  private static final int FEWEST_PHOTOS = 4;

  private final Map<String, List<List<Series>>> cycles = new TreeMap<>();
  private final Map<String, Optional<CohortPrior>> priors = new HashMap<>();

  /**
   * @param ended cohorts of which nothing stands, in the order of time
   */
  CyclePriors(List<List<PlantSeries>> ended) {
    for (List<PlantSeries> cohort : ended) {
      List<Series> told =
          cohort.stream().map(AreaSeries::of).filter(s -> s.size() >= FEWEST_PHOTOS).toList();
      if (!told.isEmpty()) {
        cycles.computeIfAbsent(kind(cohort.get(0)), k -> new ArrayList<>()).add(some(told));
      }
    }
  }

  /** Parts cohorts into those of which something stands and those that are over. */
  static CyclePriors of(Plants plants) {
    List<PlantSeries> all = new ArrayList<>(plants.ended());
    all.addAll(plants.standing());
    Set<PlantSeries> standing = Collections.newSetFromMap(new IdentityHashMap<>());
    standing.addAll(plants.standing());
    return new CyclePriors(
        GroupCohorts.of(all).stream()
            .filter(cohort -> cohort.stream().noneMatch(standing::contains))
            .toList());
  }

  /** Returns what is known of the curve of a plant's cohort; nothing without a past cycle. */
  Optional<CohortPrior> prior(PlantSeries plant) {
    return priors.computeIfAbsent(kind(plant), this::fit);
  }

  private Optional<CohortPrior> fit(String kind) {
    List<List<Series>> past = cycles.getOrDefault(kind, List.of());
    List<List<Series>> latest = past.subList(Math.max(0, past.size() - MOST_CYCLES), past.size());
    return latest.isEmpty() ? Optional.empty() : FitCohort.priorOf(latest, CohortRule.defaults());
  }

  private static String kind(PlantSeries plant) {
    Planting planting = plant.planting();
    return String.join(
        "\n", planting.crop(), planting.variety(), planting.layout(), plant.clock().name());
  }

  /** Returns every so-manieth plant, the same ones each time. */
  private static List<Series> some(List<Series> plants) {
    int n = Math.min(MOST_PLANTS, plants.size());
    List<Series> some = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      some.add(plants.get((int) ((long) i * plants.size() / n)));
    }
    return some;
  }
}
