// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.history.PlantSeries;

/** Groups plants of the same crop, variety and layout that began within two days of each other. */
final class FindCohorts {
  private static final long DAYS = 2;

  private final Function<PlantSeries, Optional<Crop>> crops;
  private final Map<String, PastCycles> cycles = new TreeMap<>();

  private FindCohorts(Function<PlantSeries, Optional<Crop>> crops) {
    this.crops = crops;
  }

  /**
   * Finds the cohort of each series.
   *
   * @param series any; several of one plant may be among them
   * @param crops what the book says of a series' crop
   * @return cohorts by series, by identity
   */
  static IdentityHashMap<PlantSeries, Cohort> of(
      List<PlantSeries> series, Function<PlantSeries, Optional<Crop>> crops) {
    FindCohorts find = new FindCohorts(crops);
    Map<String, TreeMap<LocalDate, List<PlantSeries>>> kinds = new TreeMap<>();
    for (PlantSeries plant : series) {
      kinds
          .computeIfAbsent(kind(plant) + "\n" + plant.planting().layout(), k -> new TreeMap<>())
          .computeIfAbsent(plant.since(), d -> new ArrayList<>())
          .add(plant);
    }
    IdentityHashMap<PlantSeries, Cohort> cohorts = new IdentityHashMap<>();
    kinds.values().forEach(days -> find.split(days, cohorts));
    return cohorts;
  }

  private static String kind(PlantSeries plant) {
    Planting planting = plant.planting();
    return String.join("\n", planting.crop(), planting.variety(), plant.clock().name());
  }

  private void split(
      Map<LocalDate, List<PlantSeries>> days, IdentityHashMap<PlantSeries, Cohort> cohorts) {
    Optional<Cohort> cohort = Optional.empty();
    for (Map.Entry<LocalDate, List<PlantSeries>> day : days.entrySet()) {
      if (cohort.filter(c -> !day.getKey().minusDays(DAYS).isAfter(c.since())).isEmpty()) {
        cohort = Optional.of(new Cohort(day.getKey(), cycles(day.getValue().get(0))));
      }
      for (PlantSeries plant : day.getValue()) {
        cohorts.put(plant, cohort.orElseThrow());
      }
    }
  }

  private PastCycles cycles(PlantSeries plant) {
    return cycles.computeIfAbsent(kind(plant), k -> new PastCycles(book(plant)));
  }

  /** The book's curve runs on days after transplant alone. */
  private Optional<Yardstick> book(PlantSeries plant) {
    return plant.clock() == PlantSeries.AgeClock.TRANSPLANT
        ? crops.apply(plant).flatMap(Crop::curve).map(Yardstick::of)
        : Optional.empty();
  }
}
