// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortPrior;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.forecast.AreasOf.Point;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.history.WhoGrewWhere;

/**
 * What the cycles that are over tell of a crop's growth: the latest of them, up to their first cut,
 * from which tonight's cohorts extrapolate until their own photos say otherwise. A cycle is over
 * once none of the plants that were set out with it (at most two days later) stands any more: those
 * that were weighed or died before the others are no cycle.
 */
final class FinishedCycles {
  private static final int MOST_PLANTS = 30;
  private static final int FEWEST_PHOTOS = 4;

  private final CohortRule rule;
  private final Map<String, TreeMap<LocalDate, List<HeadWeights.Grew>>> cycles = new HashMap<>();
  private final Map<String, Optional<CohortPrior>> priors = new HashMap<>();
  private final Map<String, List<CommonPath>> ways = new HashMap<>();

  private final HeadWeights weights;

  private FinishedCycles(CohortRule rule, HeadWeights weights) {
    this.rule = rule;
    this.weights = weights;
  }

  /**
   * What was collected of plants on earlier evenings. A plant that has left is seen no more, so for
   * the same life the same photos count.
   */
  static final class Memory {
    private final Map<PlantLife, Optional<Series>> series = new HashMap<>();
  }

  /**
   * Collects.
   *
   * @param book as known by the evening
   * @param looks up to the evening
   * @param rule how curves are fitted
   * @param memory of plants that had left on earlier evenings; is added to
   */
  static FinishedCycles of(CropBook book, List<SiteLook> looks, CohortRule rule, Memory memory) {
    FinishedCycles past = new FinishedCycles(rule, HeadWeights.of(book));
    TreeMap<String, PlantLife> over = new TreeMap<>();
    for (List<PlantLife> cohort : CycleStarts.cohorts(book)) {
      if (cohort.stream().noneMatch(CycleStarts::stands)) {
        cohort.forEach(life -> over.put(life.plant(), life));
      }
    }
    Map<String, PlantLife> fresh = new HashMap<>(over);
    fresh.values().removeAll(memory.series.keySet());
    Map<String, Map<LocalDate, Point>> points = new HashMap<>();
    if (!fresh.isEmpty()) {
      collect(book, looks, fresh, points);
    }
    fresh.forEach(
        (plant, life) -> memory.series.put(life, series(points.getOrDefault(plant, Map.of()))));
    over.values().forEach(life -> memory.series.get(life).ifPresent(s -> past.add(life, s)));
    return past;
  }

  private static void collect(
      CropBook book,
      List<SiteLook> looks,
      Map<String, PlantLife> over,
      Map<String, Map<LocalDate, Point>> points) {
    WhoGrewWhere who = WhoGrewWhere.of(book);
    Set<String> rafts = new HashSet<>();
    over.values().forEach(l -> l.stays().forEach(stay -> rafts.add(stay.planting().raft())));
    List<SiteLook> near =
        looks.stream()
            .filter(l -> rafts.contains(l.raft()) && sound(l))
            .sorted(
                Comparator.comparing(SiteLook::takenAt, OffsetDateTime.timeLineOrder())
                    .thenComparing(SiteLook::photo))
            .toList();
    for (SiteLook look : near) {
      Instant at = look.takenAt().toInstant();
      who.at(look.raft(), look.measure().site(), at)
          .filter(g -> g.dat().isPresent() && g.dac().isEmpty())
          .filter(g -> over.containsKey(g.plant()))
          .ifPresent(
              g ->
                  points
                      .computeIfAbsent(g.plant(), p -> new TreeMap<>())
                      .put(
                          book.farmDay().evening(at),
                          new Point(g.dat().getAsDouble(), look.measure())));
    }
  }

  private static boolean sound(SiteLook look) {
    return look.measure().held().isEmpty() && look.measure().projectedAreaCm2().orElse(0) > 0;
  }

  private static Optional<Series> series(Map<LocalDate, Point> seen) {
    return seen.size() < FEWEST_PHOTOS
        ? Optional.empty()
        : Optional.of(AreasOf.points(List.copyOf(seen.values())));
  }

  private void add(PlantLife life, Series series) {
    cycles
        .computeIfAbsent(CycleStarts.key(CycleStarts.planting(life)), k -> new TreeMap<>())
        .computeIfAbsent(life.transplantedOn().orElseThrow(), d -> new ArrayList<>())
        .add(new HeadWeights.Grew(life.plant(), series));
  }

  /**
   * Returns what is known of a crop's curve.
   *
   * @param planting tells crop, variety and layout
   * @return nothing where no cycle of it is over
   */
  Optional<CohortPrior> prior(Planting planting) {
    String key = CycleStarts.key(planting);
    return priors.computeIfAbsent(key, this::fit);
  }

  /**
   * Returns the ways that the open plants of the cycles went.
   *
   * @param planting tells crop, variety and layout
   * @param line from weight to size once plants are closed, where there is a grader
   * @return none where no cycle of it is over
   */
  List<CommonPath> ways(Planting planting, Optional<Line> line) {
    return ways.computeIfAbsent(
        CycleStarts.key(planting), key -> grouped(key).stream().map(c -> way(c, line)).toList());
  }

  private CommonPath way(List<HeadWeights.Grew> cycle, Optional<Line> line) {
    CommonPath way = CommonPath.of(cycle.stream().map(HeadWeights.Grew::series).toList());
    return line.map(l -> way.with(weights.of(cycle, way, l))).orElse(way);
  }

  private Optional<CohortPrior> fit(String key) {
    List<List<Series>> latest = latest(key);
    return latest.isEmpty() ? Optional.empty() : FitCohort.priorOf(latest, rule);
  }

  private List<List<Series>> latest(String key) {
    return grouped(key).stream().map(FinishedCycles::some).toList();
  }

  private List<List<HeadWeights.Grew>> grouped(String key) {
    List<List<HeadWeights.Grew>> grouped =
        CycleStarts.byStart(cycles.getOrDefault(key, new TreeMap<>()));
    return grouped.subList(Math.max(0, grouped.size() - CycleStarts.MOST), grouped.size());
  }

  /** Returns every so-manieth plant, the same ones each time. */
  private static List<Series> some(List<HeadWeights.Grew> plants) {
    List<Series> out = new ArrayList<>();
    int n = Math.min(MOST_PLANTS, plants.size());
    for (int i = 0; i < n; i++) {
      out.add(plants.get((int) ((long) i * plants.size() / n)).series());
    }
    return out;
  }
}
