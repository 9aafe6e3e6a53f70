// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.history.PlantSeries;

/** Groups plants of the same crop, variety and layout that began within two days of each other. */
final class FindCohorts {
  private static final long DAYS = 2;

  private FindCohorts() {}

  /** Returns the cohort of each plant. */
  static Map<String, Cohort> of(List<PlantSeries> series) {
    Map<String, TreeMap<LocalDate, List<PlantSeries>>> kinds = new TreeMap<>();
    for (PlantSeries plant : series) {
      Planting planting = plant.planting();
      String kind =
          String.join(
              "\n", planting.crop(), planting.variety(), planting.layout(), plant.clock().name());
      kinds
          .computeIfAbsent(kind, k -> new TreeMap<>())
          .computeIfAbsent(plant.since(), d -> new ArrayList<>())
          .add(plant);
    }
    Map<String, Cohort> cohorts = new HashMap<>();
    for (TreeMap<LocalDate, List<PlantSeries>> days : kinds.values()) {
      LocalDate first = LocalDate.MIN;
      Cohort cohort = new Cohort();
      for (Map.Entry<LocalDate, List<PlantSeries>> day : days.entrySet()) {
        if (day.getKey().minusDays(DAYS).isAfter(first)) {
          first = day.getKey();
          cohort = new Cohort();
        }
        for (PlantSeries plant : day.getValue()) {
          cohorts.put(plant.plant(), cohort);
        }
      }
    }
    return cohorts;
  }
}
