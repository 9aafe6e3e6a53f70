// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.CohortFit;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.cohort.NoCohortCurve;
import org.raftgauge.core.cohort.SomePlants;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;

/** Carries every standing plant's size over the coming days. */
final class Outlooks {
  /**
   * Plants from which a cohort's curve and spread come: of a thousand the spread is known to 2 %, 1
   * / sqrt(2 n), and what they have in common does not shrink with their number.
   */
  private static final int COHORT_PLANTS = 1000;

  private final ForecastRule rule;
  private final LocalDate evening;
  private final FinishedCycles past;
  private final CohortRule cohortRule;
  private final Map<String, Grader> graders;
  private final List<Outlook> plants = new ArrayList<>();
  private final Set<String> bare = new HashSet<>();
  private final Set<String> told = new HashSet<>();
  private final TreeMap<String, Set<String>> noCurve = new TreeMap<>();
  private int numbers;

  private Outlooks(Asked asked, FinishedCycles past, Map<String, Grader> graders) {
    this.rule = asked.rule();
    this.evening = asked.evening();
    this.past = past;
    this.cohortRule = CohortRule.defaults();
    this.graders = graders;
  }

  /**
   * Carries.
   *
   * @param book as known by the evening
   * @param series of the plants that stand
   * @param past what growth is carried on by
   * @param asked evening and rule
   */
  static Outlooks of(CropBook book, List<PlantSeries> series, Past past, Asked asked) {
    Outlooks outlooks = new Outlooks(asked, past.cycles(), past.graders());
    List<PlantSeries> counted =
        series.stream().filter(s -> s.clock() != PlantSeries.AgeClock.SOWING).toList();
    Map<Planting, CohortAhead> cohorts = new HashMap<>();
    for (List<PlantSeries> cohort : GroupCohorts.of(counted)) {
      outlooks.cohort(cohort, cohorts);
    }
    outlooks.unseen(book, cohorts);
    return outlooks;
  }

  /**
   * What growth is carried on by.
   *
   * @param cycles that are over
   * @param graders by crop, through which weights of those cycles lead closed plants; none where
   *     only areas are to tell
   */
  record Past(FinishedCycles cycles, Map<String, Grader> graders) {}

  private Optional<Line> line(PlantSeries plant) {
    return Optional.ofNullable(graders.get(plant.planting().crop()))
        .flatMap(g -> Line.closed(g, plant.planting().variety()));
  }

  /** Returns the plants with a curve, those found bare or brown left out. */
  List<Outlook> plants() {
    return plants;
  }

  /** Returns ids of plants that were found bare or brown when last seen. */
  Set<String> bare() {
    return bare;
  }

  /** Returns why rafts have no curve, by raft. */
  Map<String, Set<String>> noCurve() {
    return noCurve;
  }

  private void cohort(List<PlantSeries> cohort, Map<Planting, CohortAhead> cohorts) {
    List<PlantSeries> leafy = new ArrayList<>();
    for (PlantSeries plant : cohort) {
      told.add(plant.plant());
      if (lastSure(plant) && !plant.brown()) {
        leafy.add(plant);
      } else {
        bare.add(plant.plant());
      }
    }
    Map<String, Series> areas = new HashMap<>();
    leafy.forEach(p -> areas.put(p.plant(), AreasOf.plant(p)));
    CohortFit fit = fit(leafy, areas);
    if (fit instanceof CohortCurve curve) {
      boolean firstGrowth = leafy.get(0).clock() == PlantSeries.AgeClock.TRANSPLANT;
      List<CommonPath> ways =
          firstGrowth ? past.ways(leafy.get(0).planting(), line(leafy.get(0))) : List.of();
      CohortAhead ahead =
          new CohortAhead(
              new CohortAhead.Setting(numbers++, evening, rule, ways), leafy, areas, curve);
      leafy.forEach(p -> plants.add(ahead.outlook(p)));
      leafy.forEach(p -> cohorts.put(p.planting(), ahead));
    } else {
      String why = ((NoCohortCurve) fit).reason();
      leafy.forEach(
          p -> noCurve.computeIfAbsent(p.planting().raft(), r -> new TreeSet<>()).add(why));
    }
  }

  /** Says whether the last sight that was not held shows canopy, or all were held. */
  private static boolean lastSure(PlantSeries plant) {
    for (int i = plant.sights().size() - 1; i >= 0; i--) {
      if (plant.sights().get(i).measure().held().isEmpty()) {
        return !plant.sights().get(i).bare();
      }
    }
    return true;
  }

  private CohortFit fit(List<PlantSeries> leafy, Map<String, Series> areas) {
    List<Series> all = leafy.stream().map(p -> areas.get(p.plant())).toList();
    if (leafy.isEmpty() || all.stream().allMatch(s -> s.size() == 0)) {
      return new NoCohortCurve("no plant of the cohort has an area");
    }
    boolean firstGrowth = leafy.get(0).clock() == PlantSeries.AgeClock.TRANSPLANT;
    List<Series> some = SomePlants.evenly(all, COHORT_PLANTS);
    return firstGrowth
        ? past.prior(leafy.get(0).planting())
            .<CohortFit>map(prior -> FitCohort.of(some, cohortRule, prior))
            .orElseGet(() -> FitCohort.of(some, cohortRule))
        : FitCohort.of(some, cohortRule);
  }

  /** Adds the plants that stand on rafts with a curve but were never seen there. */
  private void unseen(CropBook book, Map<Planting, CohortAhead> cohorts) {
    Instant end = book.farmDay().start(evening.plusDays(1)).minusNanos(1);
    for (PlantLife life : book.plants()) {
      Optional<Planting> planting =
          life.stays().stream()
              .filter(stay -> stay.holdsAt(end))
              .map(PlantLife.Stay::planting)
              .findFirst();
      if (planting.isPresent() && !told.contains(life.plant())) {
        Optional.ofNullable(cohorts.get(planting.get()))
            .ifPresent(
                ahead ->
                    plants.add(
                        new Outlook(
                            life.plant(),
                            planting.get(),
                            false,
                            false,
                            ahead.now(),
                            ahead.growth(),
                            ahead.unseen())));
      }
    }
  }
}
