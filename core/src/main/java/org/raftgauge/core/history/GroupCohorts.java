// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;

/** Parts plants into cohorts: same crop, variety, layout and clock, begun within two days. */
public final class GroupCohorts {
  private static final long DAYS = 2;

  private GroupCohorts() {}

  /**
   * Parts plants.
   *
   * @param series any plants
   * @return their cohorts in a stable order, each of at least one plant, in the order of the day
   *     that they count from
   */
  public static List<List<PlantSeries>> of(List<PlantSeries> series) {
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
    List<List<PlantSeries>> cohorts = new ArrayList<>();
    for (TreeMap<LocalDate, List<PlantSeries>> days : kinds.values()) {
      LocalDate first = LocalDate.MIN;
      for (Map.Entry<LocalDate, List<PlantSeries>> day : days.entrySet()) {
        if (day.getKey().minusDays(DAYS).isAfter(first)) {
          first = day.getKey();
          cohorts.add(new ArrayList<>());
        }
        cohorts.get(cohorts.size() - 1).addAll(day.getValue());
      }
    }
    return cohorts;
  }
}
