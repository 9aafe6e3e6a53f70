// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.PlantSeries;

/**
 * Carries the plants of one cohort over the coming days.
 *
 * <p>Where past cycles are known, a plant stands where its photos put it when it was last seen open
 * and grows from there as all do ({@link GrowthAhead}), and by as much more or less as its own
 * curve departs from the others'. Without past cycles its own curve is all there is, and the
 * forecast is rough.
 */
final class CohortAhead {
  /**
   * What a shape that no past cycle bears is wrong by for each day ahead, standard deviation of ln
   * area: a working value from simulated seasons without past cycles.
   */
  private static final double SHAPE_DOUBT = 0.03;

  /** Days past the photos that a curve of few days bears; a working value. */
  private static final int SHORT_REACH = 7;

  private static final int FEWEST_FOR_ANCHOR = 5;

  /** Plants from which the common way is found: more tell nothing new, and cost time. */
  private static final int MOST_FOR_PATH = 600;

  private final Setting setting;
  private final CohortCurve curve;
  private final Map<String, Series> areas;
  private final Map<String, PlantCurve> own = new LinkedHashMap<>();
  private final Map<Long, Double> middles = new HashMap<>();
  private final Optional<GrowthAhead> ahead;
  private final double now;
  private final double fraction;
  private final double open;
  private final double anchor;
  private final CohortGrowth growth;

  /**
   * Evening, rule, and what is known of the cohort.
   *
   * @param number of the cohort
   * @param evening the farm's day
   * @param rule of the forecast
   * @param ways of past cycles; none where there are none or plants grow again after a cut
   */
  record Setting(int number, LocalDate evening, ForecastRule rule, List<CommonPath> ways) {}

  CohortAhead(
      Setting setting, List<PlantSeries> leafy, Map<String, Series> areas, CohortCurve curve) {
    this.setting = setting;
    this.curve = curve;
    this.areas = areas;
    LocalDate since = leafy.get(0).since();
    double last = curve.lastDat();
    this.fraction = last - Math.floor(last);
    this.now = ChronoUnit.DAYS.between(since, setting.evening()) + fraction;
    leafy.forEach(p -> own.put(p.plant(), curve.forPlant(areas.get(p.plant()))));
    this.open =
        areas.values().stream()
            .mapToDouble(CohortAhead::lastOpen)
            .filter(d -> d >= 0)
            .average()
            .orElse(0);
    CommonPath tonight = CommonPath.of(series(leafy));
    int reach =
        tonight.size() == 0
            ? setting.rule().horizon()
            : (int) Math.ceil(now - tonight.lastAge()) + setting.rule().horizon();
    this.ahead = GrowthAhead.of(setting.ways(), tonight, reach);
    this.anchor = ahead.isPresent() ? anchor() : 0;
    this.growth = ahead.map(a -> borne(a, since)).orElseGet(() -> rough(since));
  }

  /** Returns the series of the plants, of very many every so-manieth. */
  private List<Series> series(List<PlantSeries> leafy) {
    int n = Math.min(MOST_FOR_PATH, leafy.size());
    List<Series> some = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      some.add(areas.get(leafy.get((int) ((long) i * leafy.size() / n)).plant()));
    }
    return some;
  }

  CohortGrowth growth() {
    return growth;
  }

  /** Returns by how much the photos on which plants were last seen open lie over their curves. */
  private double anchor() {
    List<Double> offs = new ArrayList<>();
    areas.forEach(
        (plant, series) -> {
          int i = series.size() - 1;
          if (i >= 0 && !series.isClosed(i)) {
            offs.add(series.lnArea(i) - own.get(plant).lnArea(series.dat(i)).mean());
          }
        });
    boolean tells = offs.size() >= Math.max(FEWEST_FOR_ANCHOR, areas.size() / 2);
    return tells ? offs.stream().mapToDouble(v -> v).average().orElseThrow() : 0;
  }

  private CohortGrowth borne(GrowthAhead way, LocalDate since) {
    List<Double> curveSd = new ArrayList<>();
    List<Double> weatherSd = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      double to = Math.max(way.lastAge(), now + d);
      double sd = way.sinceLast(to).sd();
      double weather = Math.min(sd, way.weatherSd((int) Math.round(to - way.lastAge())));
      weatherSd.add(weather);
      curveSd.add(Math.sqrt(sd * sd - weather * weather));
    }
    return new CohortGrowth(
        setting.number(),
        since,
        fraction,
        curveSd,
        weatherSd,
        false,
        Math.max(0, now - curve.lastDat()),
        Optional.empty(),
        setting.rule().horizon());
  }

  private CohortGrowth rough(LocalDate since) {
    double weather = CommonGrowth.sdPerDay(List.copyOf(own.values()), setting.rule().weatherSd());
    double last = curve.lastDat();
    List<Double> curveSd = new ArrayList<>();
    List<Double> weatherSd = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      double sd = now + d > open ? curve.lnGrowth(open, now + d).sd() : 0;
      curveSd.add(Math.hypot(sd, SHAPE_DOUBT * (Math.max(0, now - last) + d)));
      weatherSd.add(weather * Math.sqrt(Math.max(0, now - open) + d));
    }
    return new CohortGrowth(
        setting.number(),
        since,
        fraction,
        curveSd,
        weatherSd,
        true,
        Math.max(0, now - last),
        curve.asymptoteDoubt(),
        reach(last));
  }

  private int reach(double last) {
    double first =
        areas.values().stream()
            .filter(s -> s.size() > 0)
            .mapToDouble(s -> s.dat(0))
            .min()
            .orElse(last);
    return (int) Math.max(SHORT_REACH, Math.floor((last - first) / 2));
  }

  private static double lastOpen(Series series) {
    for (int i = series.size() - 1; i >= 0; i--) {
      if (!series.isClosed(i)) {
        return series.dat(i);
      }
    }
    return -1;
  }

  /** Returns a plant's size on the coming days. */
  Outlook outlook(PlantSeries plant) {
    Series series = areas.get(plant.plant());
    boolean closed = series.size() > 0 && series.isClosed(series.size() - 1);
    PlantCurve told = own.get(plant.plant());
    double from = lastOpen(series);
    List<Outlook.Size> days = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      days.add(
          ahead.isPresent() && from >= 0
              ? carried(ahead.get(), told, from, now + d)
              : alone(series.size() == 0 ? curve.lnArea(now + d) : told.lnArea(now + d), d));
    }
    return new Outlook(plant.plant(), plant.planting(), closed, now, growth, days);
  }

  /** Returns the size on the coming days of a plant that was never seen. */
  List<Outlook.Size> unseen() {
    List<Outlook.Size> days = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      days.add(alone(curve.lnArea(now + d), d));
    }
    return days;
  }

  double now() {
    return now;
  }

  private Outlook.Size carried(GrowthAhead way, PlantCurve told, double from, double to) {
    Forecast level = told.lnArea(from);
    Forecast then = told.lnArea(to);
    double departs = then.mean() - middle(to) - (level.mean() - middle(from));
    double wandered = curve.wanderPerDay() * curve.wanderPerDay() * Math.max(0, to - from);
    double common = to > from ? curve.lnGrowth(from, to).sd() : 0;
    double variance =
        Math.max(level.sd() * level.sd() + wandered, then.sd() * then.sd() - common * common);
    double mean = level.mean() + anchor + way.growth(from, to) + departs;
    return new Outlook.Size(mean, Math.sqrt(variance));
  }

  /** Returns the mean over plants of their own curves. */
  private double middle(double at) {
    return middles.computeIfAbsent(
        Math.round(at * 50),
        step ->
            own.values().stream()
                .mapToDouble(p -> p.lnArea(step / 50.0).mean())
                .average()
                .orElseThrow());
  }

  private Outlook.Size alone(Forecast told, int day) {
    double shared = growth.curveSd().get(day);
    return new Outlook.Size(
        told.mean(), Math.sqrt(Math.max(0, told.sd() * told.sd() - shared * shared)));
  }
}
