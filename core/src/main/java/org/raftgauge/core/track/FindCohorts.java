// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.reference.HouseClimate;

/** Gives each plant its cohort, and each cohort the others of its crop and variety. */
final class FindCohorts {
  private final Function<PlantSeries, Optional<Crop>> crops;
  private final HouseClimate climate;
  private final Map<String, PastCycles> cycles = new TreeMap<>();

  private FindCohorts(Function<PlantSeries, Optional<Crop>> crops, HouseClimate climate) {
    this.crops = crops;
    this.climate = climate;
  }

  /**
   * Finds the cohort of each series.
   *
   * @param series any; several of one plant may be among them
   * @param crops what the book says of a series' crop
   * @param climate the book's daily temperatures
   * @return cohorts by series, by identity
   */
  static IdentityHashMap<PlantSeries, Cohort> of(
      List<PlantSeries> series, Function<PlantSeries, Optional<Crop>> crops, HouseClimate climate) {
    FindCohorts find = new FindCohorts(crops, climate);
    IdentityHashMap<PlantSeries, Cohort> cohorts = new IdentityHashMap<>();
    for (List<PlantSeries> plants : GroupCohorts.of(series)) {
      // They stand in the order of the day that they count from.
      Cohort cohort = new Cohort(plants.get(0).since(), find.cycles(plants.get(0)));
      plants.forEach(plant -> cohorts.put(plant, cohort));
    }
    return cohorts;
  }

  private PastCycles cycles(PlantSeries plant) {
    Planting planting = plant.planting();
    String kind = String.join("\n", planting.crop(), planting.variety(), plant.clock().name());
    return cycles.computeIfAbsent(kind, k -> new PastCycles(book(plant), climate));
  }

  /** The book's curve runs on days after transplant alone. */
  private Optional<Yardstick> book(PlantSeries plant) {
    return plant.clock() == PlantSeries.AgeClock.TRANSPLANT
        ? crops.apply(plant).flatMap(Crop::curve).map(Yardstick::of)
        : Optional.empty();
  }
}
