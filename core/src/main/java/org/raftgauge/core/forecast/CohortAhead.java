// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.PlantSeries;

/**
 * Carries the plants of one cohort over the coming days.
 *
 * <p>Where past cycles are known, all grow as one ({@link GrowthAhead}), each as far off the others
 * as on the last evenings on which it was open: a curve of its own, carried past its photos,
 * departs ever more. Without past cycles its own curve is all there is, and the forecast is rough.
 */
final class CohortAhead {
  /**
   * What a shape that no past cycle bears is wrong by for each day ahead, standard deviation of ln
   * area: a working value from simulated seasons without past cycles.
   */
  private static final double SHAPE_DOUBT = 0.03;

  /** Days past the photos that a curve of few days bears; a working value. */
  private static final int SHORT_REACH = 7;

  /** Plants from which the common way is found: more tell nothing new, and cost time. */
  private static final int MOST_FOR_PATH = 600;

  private final Setting setting;
  private final CohortCurve curve;
  private final Map<String, Series> areas;
  private final Map<String, PlantCurve> own = new LinkedHashMap<>();
  private final CommonPath tonight;
  private final Optional<GrowthAhead> ahead;
  private final double now;
  private final double fraction;
  private final double open;
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
    this.tonight = CommonPath.of(series(leafy));
    int reach =
        tonight.size() == 0
            ? setting.rule().horizon()
            : (int) Math.ceil(now - tonight.lastAge()) + setting.rule().horizon();
    this.ahead = GrowthAhead.of(setting.ways(), tonight, reach);
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

  private CohortGrowth borne(GrowthAhead way, LocalDate since) {
    List<Double> curveSd = new ArrayList<>();
    List<Double> weighedSd = new ArrayList<>();
    List<Double> weatherSd = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      double to = Math.max(way.lastAge(), now + d);
      double sd = way.sinceLast(to, false).sd();
      double weighed = way.weighed() ? way.sinceLast(to, true).sd() : sd;
      double weather =
          Math.min(Math.min(sd, weighed), way.weatherSd((int) Math.round(to - way.lastAge())));
      weatherSd.add(weather);
      curveSd.add(Math.sqrt(sd * sd - weather * weather));
      weighedSd.add(Math.sqrt(weighed * weighed - weather * weather));
    }
    return new CohortGrowth(
        setting.number(),
        since,
        fraction,
        curveSd,
        weighedSd,
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
    OptionalDouble off = ahead.isPresent() ? tonight.own(series) : OptionalDouble.empty();
    boolean led = closed && off.isPresent() && ahead.orElseThrow().weighed();
    PlantCurve told = own.get(plant.plant());
    List<Outlook.Size> days = new ArrayList<>();
    for (int d = 0; d <= setting.rule().horizon(); d++) {
      double to = now + d;
      days.add(
          off.isPresent()
              ? new Outlook.Size(
                  off.getAsDouble() + ahead.orElseThrow().lnArea(to, false),
                  off.getAsDouble() + ahead.orElseThrow().lnArea(to, led),
                  tonight.ownSd(to - lastOpen(series)))
              : alone(series.size() == 0 ? curve.lnArea(to) : told.lnArea(to), d));
    }
    return new Outlook(plant.plant(), plant.planting(), closed, led, now, growth, days);
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

  private Outlook.Size alone(Forecast told, int day) {
    double shared = growth.curveSd().get(day);
    return new Outlook.Size(
        told.mean(), Math.sqrt(Math.max(0, told.sd() * told.sd() - shared * shared)));
  }
}
