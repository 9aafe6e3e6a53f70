// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;

/**
 * Asks of each pond whether its plants still grow together as they did: where all stop at once,
 * none lags behind the others. Where ponds are not named, the farm is asked.
 *
 * <p>The plants of each cohort in a pond are asked for themselves, those alone that are seen
 * tonight and on the raft where they stand: harvested and emptied rafts, and the first days of
 * plants that were moved, have no part in it. Where leaves touch, photos from above no longer tell
 * growth; trays are judged by emergence.
 */
final class PondGrowth {
  /** Fewest plants that stand for a pond's cohort, and fewest on an evening: working values. */
  private static final int FEWEST_PLANTS = 8;

  private static final int FEWEST_TOGETHER = 5;

  /** Share of plants in touch from which the others are no sample of all: a working value. */
  private static final double CROWDED = 0.3;

  /** Share of the limit of closed sites from which leaves touch enough to hide growth. */
  private static final double TOUCHING = 0.5;

  /** Share of the rafts that must show it: a working value. */
  private static final double TOGETHER = 0.75;

  private static final long LOOKED_BACK_DAYS = 40;

  private final Function<PlantSeries, Optional<Crop>> crops;
  private final LocalDate evening;
  private final Map<Cohort, Map<String, Map<LocalDate, PatchLevel>>> levels = new HashMap<>();
  private final Map<String, List<Found>> found = new TreeMap<>();
  private final Map<Cohort, Set<String>> ponds = new HashMap<>();

  /**
   * What was found of the plants of a cohort in a pond.
   *
   * @param cohort the cohort
   * @param crop of its plants
   * @param plants how many of them tell
   * @param rafts that they stand on
   * @param slowing how they grow
   */
  record Found(Cohort cohort, String crop, int plants, Set<String> rafts, Slowing slowing) {}

  /**
   * @param pass the farm after the evening
   * @param tonight plants seen on the evening
   * @param evening the evening
   * @param crops what the book says of a series' crop
   */
  PondGrowth(
      FarmPass pass,
      List<Follow> tonight,
      LocalDate evening,
      Function<PlantSeries, Optional<Crop>> crops) {
    this.crops = crops;
    this.evening = evening;
    for (Patch patch : pass.patches()) {
      Map<LocalDate, PatchLevel> evenings =
          levels
              .computeIfAbsent(patch.cohort(), c -> new HashMap<>())
              .computeIfAbsent(patch.raft(), r -> new HashMap<>());
      patch.levels().forEach(level -> evenings.put(level.evening(), level));
    }
    Map<String, Map<Cohort, List<Follow>>> groups = new TreeMap<>();
    for (Follow plant : tonight) {
      String pond = plant.series().planting().pond();
      ponds.computeIfAbsent(plant.cohort(), c -> new TreeSet<>()).add(pond);
      groups
          .computeIfAbsent(pond, p -> new LinkedHashMap<>())
          .computeIfAbsent(plant.cohort(), c -> new ArrayList<>())
          .add(plant);
    }
    groups.forEach(
        (pond, cohorts) ->
            cohorts.values().stream()
                .flatMap(plants -> find(plants, cohorts.size()).stream())
                .forEach(f -> found.computeIfAbsent(pond, p -> new ArrayList<>()).add(f)));
  }

  /** Returns the worst that was found of a pond, by how little it can be chance. */
  Optional<Found> of(String pond) {
    return found.getOrDefault(pond, List.of()).stream()
        .min(
            Comparator.comparing((Found f) -> f.slowing().kind())
                .thenComparing(f -> f.slowing().chance()));
  }

  /** Returns all that was found of a pond. */
  List<Found> all(String pond) {
    return List.copyOf(found.getOrDefault(pond, List.of()));
  }

  /**
   * Says whether all that a cohort's plants are held against on the evening has slowed with them.
   */
  boolean slowedTogether(Cohort cohort) {
    Set<String> all = ponds.getOrDefault(cohort, Set.of());
    return !all.isEmpty()
        && all.stream()
            .allMatch(
                pond ->
                    found.getOrDefault(pond, List.of()).stream()
                        .anyMatch(f -> f.cohort() == cohort));
  }

  private Optional<Found> find(List<Follow> plants, int groups) {
    PlantSeries first = plants.get(0).series();
    List<Follow> sound =
        plants.stream().filter(p -> p.series().last().hasArea() && !p.series().brown()).toList();
    List<Follow> open = sound.stream().filter(p -> open(p, p.series().last())).toList();
    if (first.clock() == PlantSeries.AgeClock.SOWING
        || open.size() < FEWEST_PLANTS
        || open.size() < (1 - CROWDED) * sound.size()) {
      return Optional.empty();
    }
    Cohort cohort = plants.get(0).cohort();
    List<CommonGrowth.Look> looks = looks(open);
    List<CommonGrowth.Point> points = CommonGrowth.of(looks, FEWEST_TOGETHER).points();
    boolean fresh =
        !points.isEmpty() && points.get(points.size() - 1).day() == evening.toEpochDay();
    return fresh
        ? Slowing.of(points, new Slowing.Known(cohort.yardstick(), harvestFrom(first), groups))
            .filter(s -> s.kind() == Slowing.Kind.SHRINKS || !harvestable(first))
            .filter(s -> areTogether(open, looks, s))
            .map(s -> new Found(cohort, first.planting().crop(), open.size(), rafts(open), s))
        : Optional.empty();
  }

  /**
   * Says whether the plants of most rafts, each by itself, did nearer to what was found than to
   * what was foretold: a cut of some rafts is not the pond's.
   */
  private static boolean areTogether(
      List<Follow> plants, List<CommonGrowth.Look> looks, Slowing slowing) {
    Map<String, List<CommonGrowth.Look>> rafts = new HashMap<>();
    for (CommonGrowth.Look look : looks) {
      if (look.day() >= slowing.since()) {
        String raft = plants.get(look.plant()).series().last().raft();
        rafts.computeIfAbsent(raft, r -> new ArrayList<>()).add(look);
      }
    }
    double between = 0.5 * (slowing.rate() + slowing.rateForetold());
    int asked = 0;
    int slow = 0;
    for (List<CommonGrowth.Look> raft : rafts.values()) {
      List<CommonGrowth.Point> points = CommonGrowth.of(raft, 1).points();
      if (points.size() > 1) {
        asked++;
        slow += GrowthLine.of(points).slope() < between ? 1 : 0;
      }
    }
    return slow >= TOGETHER * asked;
  }

  private static Set<String> rafts(Collection<Follow> plants) {
    return plants.stream()
        .map(p -> p.series().last().raft())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Returns the age at which plants are first harvested, where the book says it. */
  private OptionalDouble harvestFrom(PlantSeries plant) {
    return plant.clock() == PlantSeries.AgeClock.TRANSPLANT
        ? crops
            .apply(plant)
            .flatMap(Crop::harvest)
            .map(h -> OptionalDouble.of(h.windowFromDat()))
            .orElse(OptionalDouble.empty())
        : OptionalDouble.empty();
  }

  /** Says whether plants have come to the days on which they are harvested: they may be grown. */
  private boolean harvestable(PlantSeries plant) {
    OptionalDouble from = harvestFrom(plant);
    return from.isPresent() && plant.last().ageDays() >= from.getAsDouble();
  }

  private static boolean open(Follow plant, Sight sight) {
    return !sight.measure().closed()
        && sight.measure().sharedOutlineFraction() <= TOUCHING * plant.limits().closedOutline();
  }

  private List<CommonGrowth.Look> looks(List<Follow> plants) {
    List<CommonGrowth.Look> looks = new ArrayList<>();
    for (int i = 0; i < plants.size(); i++) {
      Follow plant = plants.get(i);
      String raft = plant.series().last().raft();
      Map<LocalDate, PatchLevel> known =
          levels.getOrDefault(plant.cohort(), Map.of()).getOrDefault(raft, Map.of());
      for (Sight sight : plant.series().sights()) {
        PatchLevel level = known.get(sight.evening());
        boolean usable =
            sight.raft().equals(raft)
                && sight.hasArea()
                && open(plant, sight)
                && !sight.evening().isBefore(evening.minusDays(LOOKED_BACK_DAYS));
        if (usable && level != null && !level.doubtful()) {
          looks.add(
              new CommonGrowth.Look(
                  i,
                  sight.evening().toEpochDay(),
                  sight.ageDays(),
                  Math.log(sight.areaCm2()) - level.takenOff()));
        }
      }
    }
    return looks;
  }
}
