// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.FitGrowth;
import org.raftgauge.core.growth.FitRule;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/**
 * The growth that a cohort's plants share, carried on from its own way and those of past cycles.
 *
 * <p>Neither which curve it is nor how much weather moves growth, carries over, and how much cycles
 * differ is known: forecasts are averaged over guesses of all of these, each weighted by how well
 * it explains the ways (Hoeting and others 1999, Statistical Science 14:382-417). So intervals are
 * as wide as the ways of this farm's own cycles make them.
 */
final class GrowthAhead {
  private static final List<CurveModel> MODELS = List.of(CurveModel.LOGISTIC, CurveModel.GOMPERTZ);

  /** Day-to-day spread of growth as a share of it; weighted as lognormal about 12 %. */
  private static final double[] WEATHER_SD = {0.04, 0.08, 0.15, 0.28};

  private static final double USUAL_WEATHER = 0.12;
  private static final double WEATHER_SPREAD = 0.7;

  /** How much of a day's weather stays the next. */
  private static final double[] STAYS = {0.3, 0.6, 0.85};

  private static final double[] LOOSENESS = {0.6, 1, 1.7};
  private static final double[] MISS_SD = {0.01, 0.04};

  /** Guesses of less weight than this share of the best are passed over. */
  private static final double NEGLIGIBLE = 1e-4;

  private static final double STEPS_A_DAY = 50;

  private final List<PathModel> models = new ArrayList<>();
  private final List<PathModel.Guess> guesses = new ArrayList<>();
  private final List<Double> weights = new ArrayList<>();
  private final Map<Long, Double> levels = new HashMap<>();
  private final Map<Long, Double> weighedLevels = new HashMap<>();
  private final double last;
  private final boolean weighed;

  private GrowthAhead(double last, boolean weighed) {
    this.last = last;
    this.weighed = weighed;
  }

  /**
   * Prepares.
   *
   * @param past ways of past cycles
   * @param tonight the cohort's own way
   * @param reachDays days past its last evening that may be asked
   * @return nothing where no way of a past cycle, or none of tonight, can be drawn on
   */
  static Optional<GrowthAhead> of(List<CommonPath> past, CommonPath tonight, int reachDays) {
    List<CommonPath> ways = new ArrayList<>(past.stream().filter(p -> p.size() > 2).toList());
    if (ways.isEmpty() || tonight.size() == 0) {
      return Optional.empty();
    }
    Series typical = typical(ways);
    ways.add(tonight);
    double oldest =
        ways.stream()
            .flatMap(w -> w.weighed().stream())
            .mapToDouble(ScalePoint::age)
            .max()
            .orElse(0);
    int days = (int) Math.ceil(Math.max(oldest, tonight.lastAge() + reachDays)) + 2;
    GrowthAhead ahead = new GrowthAhead(tonight.lastAge(), oldest > 0);
    for (CurveModel model : MODELS) {
      FitRule rule =
          new FitRule(FitRule.Scale.LN_AREA, List.of(model), FitRule.Outliers.KEEP, 0.03);
      if (FitGrowth.of(typical, rule) instanceof Fitted fitted) {
        ahead.add(fitted.curve(), ways, days);
      }
    }
    return ahead.models.isEmpty() ? Optional.empty() : Optional.of(ahead.weighted());
  }

  /** Returns the mean of the ways, day by day, as a series. */
  private static Series typical(List<CommonPath> ways) {
    TreeMap<Long, List<double[]>> days = new TreeMap<>();
    for (CommonPath way : ways) {
      for (int i = 0; i < way.size(); i++) {
        days.computeIfAbsent((long) Math.floor(way.age(i)), d -> new ArrayList<>())
            .add(new double[] {way.age(i), way.lnArea(i)});
      }
    }
    return Series.of(
        days.values().stream().mapToDouble(d -> mean(d, 0)).toArray(),
        days.values().stream().mapToDouble(d -> Math.exp(mean(d, 1))).toArray());
  }

  private static double mean(List<double[]> points, int which) {
    return points.stream().mapToDouble(p -> p[which]).average().orElseThrow();
  }

  private void add(GrowthCurve curve, List<CommonPath> ways, int days) {
    for (double stays : STAYS) {
      WeatherWalk weather = new WeatherWalk(curve, stays, days);
      for (double sd : WEATHER_SD) {
        for (double looseness : LOOSENESS) {
          for (double miss : MISS_SD) {
            PathModel.Guess guess =
                new PathModel.Guess(curve.model(), weather, sd, looseness, miss);
            PathModel model = new PathModel(guess, curve.working(), ways);
            double off = Math.log(sd / USUAL_WEATHER) / WEATHER_SPREAD;
            models.add(model);
            guesses.add(guess);
            weights.add(model.logLikelihood() - off * off / 2);
          }
        }
      }
    }
  }

  /** Turns logarithms into weights that sum to 1. */
  private GrowthAhead weighted() {
    double best = weights.stream().mapToDouble(w -> w).max().orElseThrow();
    for (int k = weights.size() - 1; k >= 0; k--) {
      double weight = Math.exp(weights.get(k) - best);
      weights.set(k, weight);
      if (!(weight >= NEGLIGIBLE)) {
        weights.remove(k);
        models.remove(k);
        guesses.remove(k);
      }
    }
    double sum = weights.stream().mapToDouble(w -> w).sum();
    weights.replaceAll(w -> w / sum);
    return this;
  }

  /** Returns the age of the last evening of the cohort's way. */
  double lastAge() {
    return last;
  }

  /** Says whether the scale told how closed plants of past cycles went on. */
  boolean weighed() {
    return weighed;
  }

  /**
   * Returns the ln area of the typical one of tonight's plants.
   *
   * @param at age, days
   * @param byWeight whether the size is meant at which the grader's line gives its weight, as the
   *     scale told of past cycles
   */
  double lnArea(double at, boolean byWeight) {
    return level(at, byWeight);
  }

  /** Returns the expected ln area, up to a constant, at the nearest fiftieth of a day. */
  private double level(double at, boolean byWeight) {
    return (byWeight ? weighedLevels : levels)
        .computeIfAbsent(
            Math.round(at * STEPS_A_DAY),
            step -> {
              double sum = 0;
              for (int k = 0; k < models.size(); k++) {
                sum += weights.get(k) * models.get(k).lnArea(step / STEPS_A_DAY, byWeight);
              }
              return sum;
            });
  }

  /**
   * Returns the growth of ln area since the last evening.
   *
   * @param to age, days
   * @param byWeight whether to the size at which the grader's line gives the weight
   */
  Forecast sinceLast(double to, boolean byWeight) {
    double mean = level(to, byWeight) - level(last, false);
    double variance = 0;
    for (int k = 0; k < models.size(); k++) {
      PathModel model = models.get(k);
      double off = model.lnArea(to, byWeight) - model.lnArea(last, false) - mean;
      variance += weights.get(k) * (model.growthVariance(last, to, byWeight) + off * off);
    }
    return new Forecast(mean, Math.sqrt(variance));
  }

  /**
   * Returns the standard deviation that weather to come adds to the growth since the last evening:
   * all cohorts share it.
   *
   * @param days after the last evening
   */
  double weatherSd(int days) {
    double variance = 0;
    for (int k = 0; k < guesses.size(); k++) {
      PathModel.Guess guess = guesses.get(k);
      double sd = guess.weatherSd();
      variance += weights.get(k) * sd * sd * guess.weather().ahead(last, days);
    }
    return Math.sqrt(variance);
  }
}
