// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
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
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.cohort.NoCohortCurve;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;

/** Carries every standing plant's size over the coming days. */
final class Outlooks {
  /**
   * What a shape that no past cycle bears is wrong by for each day ahead, standard deviation of ln
   * area: a working value from simulated seasons without past cycles.
   */
  private static final double SHAPE_DOUBT = 0.03;

  /** Days past the photos that a curve of few days bears; a working value. */
  private static final int SHORT_REACH = 7;

  private final ForecastRule rule;
  private final LocalDate evening;
  private final FinishedCycles past;
  private final CohortRule cohortRule;
  private final List<Outlook> plants = new ArrayList<>();
  private final Set<String> bare = new HashSet<>();
  private final Set<String> told = new HashSet<>();
  private final TreeMap<String, Set<String>> noCurve = new TreeMap<>();
  private int cohorts;

  private Outlooks(Asked asked, FinishedCycles past, CohortRule cohortRule) {
    this.rule = asked.rule();
    this.evening = asked.evening();
    this.past = past;
    this.cohortRule = cohortRule;
  }

  /**
   * Carries.
   *
   * @param book as known by the evening
   * @param series of the plants that stand
   * @param past cycles that are over
   * @param asked evening and rule
   */
  static Outlooks of(CropBook book, List<PlantSeries> series, FinishedCycles past, Asked asked) {
    Outlooks outlooks = new Outlooks(asked, past, CohortRule.defaults());
    List<PlantSeries> counted =
        series.stream().filter(s -> s.clock() != PlantSeries.AgeClock.SOWING).toList();
    Map<Planting, CohortCurve> curves = new HashMap<>();
    Map<Planting, CohortGrowth> growths = new HashMap<>();
    for (List<PlantSeries> cohort : GroupCohorts.of(counted)) {
      outlooks.cohort(cohort, curves, growths);
    }
    outlooks.unseen(book, curves, growths);
    return outlooks;
  }

  /** Returns the plants with a curve, those found bare left out. */
  List<Outlook> plants() {
    return plants;
  }

  /** Returns ids of plants that were found bare when last seen. */
  Set<String> bare() {
    return bare;
  }

  /** Returns why rafts have no curve, by raft. */
  Map<String, Set<String>> noCurve() {
    return noCurve;
  }

  private void cohort(
      List<PlantSeries> cohort,
      Map<Planting, CohortCurve> curves,
      Map<Planting, CohortGrowth> growths) {
    List<PlantSeries> leafy = new ArrayList<>();
    for (PlantSeries plant : cohort) {
      told.add(plant.plant());
      if (lastSure(plant)) {
        leafy.add(plant);
      } else {
        bare.add(plant.plant());
      }
    }
    Map<String, Series> areas = new HashMap<>();
    leafy.forEach(p -> areas.put(p.plant(), AreasOf.plant(p)));
    CohortFit fit = fit(leafy, areas);
    if (fit instanceof CohortCurve curve) {
      CohortGrowth growth = growth(leafy, areas, curve);
      leafy.forEach(p -> plants.add(outlook(p, areas.get(p.plant()), curve, growth)));
      leafy.forEach(p -> curves.put(p.planting(), curve));
      leafy.forEach(p -> growths.put(p.planting(), growth));
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
    return firstGrowth
        ? past.prior(leafy.get(0).planting())
            .<CohortFit>map(prior -> FitCohort.of(all, cohortRule, prior))
            .orElseGet(() -> FitCohort.of(all, cohortRule))
        : FitCohort.of(all, cohortRule);
  }

  private CohortGrowth growth(
      List<PlantSeries> leafy, Map<String, Series> areas, CohortCurve curve) {
    LocalDate since = leafy.get(0).since();
    double last = curve.lastDat();
    double fraction = last - Math.floor(last);
    double now = ChronoUnit.DAYS.between(since, evening) + fraction;
    double open =
        areas.values().stream()
            .mapToDouble(Outlooks::lastOpen)
            .filter(d -> d >= 0)
            .average()
            .orElse(0);
    List<PlantCurve> own = leafy.stream().map(p -> curve.forPlant(areas.get(p.plant()))).toList();
    boolean firstGrowth = leafy.get(0).clock() == PlantSeries.AgeClock.TRANSPLANT;
    SharedGrowth shared =
        new SharedGrowth(
            curve,
            own,
            open,
            firstGrowth ? Optional.of(leafy.get(0).planting()) : Optional.empty());
    boolean history = shared.hasHistory(past);
    List<Double> shift = new ArrayList<>();
    List<Double> sd = new ArrayList<>();
    for (int d = 0; d <= rule.horizon(); d++) {
      shift.add(shared.shift(past, now + d));
      double ahead = Math.max(0, now - last) + d;
      sd.add(Math.hypot(shared.sd(past, now + d), history ? 0 : SHAPE_DOUBT * ahead));
    }
    return new CohortGrowth(
        cohorts++,
        since,
        fraction,
        shift,
        sd,
        history ? 0 : CommonGrowth.sdPerDay(own, rule.weatherSd()),
        Math.max(0, now - open),
        Math.max(0, now - last),
        history ? Optional.empty() : curve.asymptoteDoubt(),
        history ? rule.horizon() : reach(areas, last));
  }

  private static double lastOpen(Series series) {
    for (int i = series.size() - 1; i >= 0; i--) {
      if (!series.isClosed(i)) {
        return series.dat(i);
      }
    }
    return -1;
  }

  private static int reach(Map<String, Series> areas, double last) {
    double first =
        areas.values().stream()
            .filter(s -> s.size() > 0)
            .mapToDouble(s -> s.dat(0))
            .min()
            .orElse(last);
    return (int) Math.max(SHORT_REACH, Math.floor((last - first) / 2));
  }

  private Outlook outlook(PlantSeries plant, Series areas, CohortCurve curve, CohortGrowth growth) {
    boolean closed = areas.size() > 0 && areas.isClosed(areas.size() - 1);
    PlantCurve own = curve.forPlant(areas);
    double now = ChronoUnit.DAYS.between(plant.since(), evening) + growth.dayFraction();
    List<Outlook.Size> days = new ArrayList<>();
    for (int d = 0; d <= rule.horizon(); d++) {
      double dat = now + d;
      days.add(size(areas.size() == 0 ? curve.lnArea(dat) : own.lnArea(dat), growth, d));
    }
    return new Outlook(plant.plant(), plant.planting(), closed, now, growth, days);
  }

  private static Outlook.Size size(Forecast told, CohortGrowth growth, int day) {
    double shared = growth.curveSd().get(day);
    double own = Math.sqrt(Math.max(0, told.sd() * told.sd() - shared * shared));
    return new Outlook.Size(told.mean() + growth.shift().get(day), own);
  }

  /** Adds the plants that stand on rafts with a curve but were never seen there. */
  private void unseen(
      CropBook book, Map<Planting, CohortCurve> curves, Map<Planting, CohortGrowth> growths) {
    Instant end = book.farmDay().start(evening.plusDays(1)).minusNanos(1);
    for (PlantLife life : book.plants()) {
      Optional<Planting> planting =
          life.stays().stream()
              .filter(stay -> stay.holdsAt(end))
              .map(PlantLife.Stay::planting)
              .findFirst();
      if (planting.isPresent() && !told.contains(life.plant())) {
        Optional.ofNullable(curves.get(planting.get()))
            .ifPresent(
                curve ->
                    plants.add(unseen(life, planting.get(), curve, growths.get(planting.get()))));
      }
    }
  }

  private Outlook unseen(
      PlantLife life, Planting planting, CohortCurve curve, CohortGrowth growth) {
    double now = ChronoUnit.DAYS.between(growth.since(), evening) + growth.dayFraction();
    List<Outlook.Size> days = new ArrayList<>();
    for (int d = 0; d <= rule.horizon(); d++) {
      days.add(size(curve.lnArea(now + d), growth, d));
    }
    return new Outlook(life.plant(), planting, false, now, growth, days);
  }
}
