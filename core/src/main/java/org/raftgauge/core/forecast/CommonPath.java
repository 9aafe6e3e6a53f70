// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.growth.Series;

/**
 * The way that a cohort's open plants went together, evening by evening: ln area up to a constant.
 *
 * <p>ln area of a plant on an evening is taken as the plant's own size plus the evening's; both are
 * found by median polish (Tukey 1977, Exploratory Data Analysis, chapter 11), so that neither
 * plants that close, die or stall nor a missed photo bend the way of the others. Evenings of fewer
 * than three plants are left out; of more than sixteen evenings as many, evenly spread, are kept.
 * Holds arrays, so it is no record; never changes.
 */
final class CommonPath {
  private static final int ROUNDS = 10;
  private static final int FEWEST_PLANTS = 3;
  private static final int MOST_EVENINGS = 16;

  /** Evenings that tell how a plant stands to the others: fewer are noise, more are long past. */
  private static final int OWN_EVENINGS = 5;

  /** What all areas of an evening are off together by light and pose; a working value. */
  private static final double EVENING_SD = 0.003;

  /** A median's standard error over a mean's, of normal values: root of pi / 2. */
  private static final double MEDIAN = Math.sqrt(Math.PI / 2);

  /** Standard deviation over the median of absolute departures, of normal values. */
  private static final double MAD = 1.4826;

  private final double[] age;
  private final double[] lnArea;
  private final double[] variance;
  private final Departures departures;
  private final List<ScalePoint> weighed;

  private CommonPath(
      double[] age,
      double[] lnArea,
      double[] variance,
      Departures departures,
      List<ScalePoint> weighed) {
    this.age = age;
    this.lnArea = lnArea;
    this.variance = variance;
    this.departures = departures;
    this.weighed = List.copyOf(weighed);
  }

  /**
   * Returns the same way with what the scale told of it.
   *
   * @param points sizes of closed plants
   */
  CommonPath with(List<ScalePoint> points) {
    return new CommonPath(age, lnArea, variance, departures, points);
  }

  /** Returns what the scale told of closed plants. */
  List<ScalePoint> weighed() {
    return weighed;
  }

  /**
   * Returns by how much a plant's ln area lay over the way on the last evenings on which it was
   * open: their median.
   *
   * @param plant its areas over age
   * @return nothing of a plant never seen open while the way was known
   */
  OptionalDouble own(Series plant) {
    List<Double> offs = new ArrayList<>();
    for (int i = plant.size() - 1; i >= 0 && offs.size() < OWN_EVENINGS; i--) {
      boolean known = size() > 0 && plant.dat(i) >= age[0] - 1 && plant.dat(i) <= lastAge() + 1;
      if (!plant.isClosed(i) && known) {
        offs.add(plant.lnArea(i) - at(plant.dat(i)));
      }
    }
    return offs.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(median(offs));
  }

  /**
   * Returns the standard deviation of what {@link #own} tells of a plant some days later.
   *
   * @param days since it was last seen open
   */
  double ownSd(double days) {
    return departures.sd(OWN_EVENINGS, days);
  }

  /** Returns the way at an age, straight between evenings. */
  private double at(double when) {
    int k = 0;
    while (k < age.length - 2 && when > age[k + 1]) {
      k++;
    }
    if (age.length == 1) {
      return lnArea[0];
    }
    double share = (when - age[k]) / (age[k + 1] - age[k]);
    return lnArea[k] + share * (lnArea[k + 1] - lnArea[k]);
  }

  private static final class Evening {
    private final List<double[]> points = new ArrayList<>();
    private double level;
  }

  /**
   * Finds the way.
   *
   * @param plants series of areas over age; closed points are passed over
   */
  static CommonPath of(List<Series> plants) {
    TreeMap<Long, Evening> evenings = new TreeMap<>();
    for (int p = 0; p < plants.size(); p++) {
      Series series = plants.get(p);
      for (int i = 0; i < series.size(); i++) {
        if (!series.isClosed(i)) {
          evenings
              .computeIfAbsent((long) Math.floor(series.dat(i)), d -> new Evening())
              .points
              .add(new double[] {p, series.dat(i), series.lnArea(i)});
        }
      }
    }
    evenings.values().removeIf(e -> e.points.size() < FEWEST_PLANTS);
    double[] own = polish(evenings, plants.size());
    List<List<double[]>> offs = new ArrayList<>();
    for (int p = 0; p < own.length; p++) {
      offs.add(new ArrayList<>());
    }
    evenings
        .values()
        .forEach(
            e ->
                e.points.forEach(
                    q -> offs.get((int) q[0]).add(new double[] {q[1], q[2] - e.level})));
    return path(evenings, own, Departures.of(offs));
  }

  private static double[] polish(Map<Long, Evening> evenings, int plants) {
    double[] own = new double[plants];
    for (int round = 0; round < ROUNDS; round++) {
      List<List<Double>> offs = new ArrayList<>();
      for (int p = 0; p < plants; p++) {
        offs.add(new ArrayList<>());
      }
      for (Evening evening : evenings.values()) {
        evening.level = median(evening.points.stream().map(q -> q[2] - own[(int) q[0]]).toList());
        evening.points.forEach(q -> offs.get((int) q[0]).add(q[2] - evening.level));
      }
      for (int p = 0; p < plants; p++) {
        own[p] = offs.get(p).isEmpty() ? 0 : median(offs.get(p));
      }
    }
    return own;
  }

  private static CommonPath path(Map<Long, Evening> evenings, double[] own, Departures departures) {
    List<Double> offs = new ArrayList<>();
    for (Evening evening : evenings.values()) {
      evening.points.forEach(q -> offs.add(Math.abs(q[2] - own[(int) q[0]] - evening.level)));
    }
    double sd = offs.isEmpty() ? 0 : MAD * median(offs);
    List<Map.Entry<Long, Evening>> kept = thinned(List.copyOf(evenings.entrySet()));
    int n = kept.size();
    CommonPath path =
        new CommonPath(new double[n], new double[n], new double[n], departures, List.of());
    for (int k = 0; k < n; k++) {
      Evening evening = kept.get(k).getValue();
      path.age[k] = evening.points.stream().mapToDouble(q -> q[1]).average().orElseThrow();
      path.lnArea[k] = evening.level;
      double se = MEDIAN * sd / Math.sqrt(evening.points.size());
      path.variance[k] = se * se + EVENING_SD * EVENING_SD;
    }
    return path;
  }

  private static <T> List<T> thinned(List<T> all) {
    int n = all.size();
    if (n <= MOST_EVENINGS) {
      return all;
    }
    List<T> some = new ArrayList<>();
    for (int k = 0; k < MOST_EVENINGS; k++) {
      some.add(all.get((int) Math.round(k * (n - 1.0) / (MOST_EVENINGS - 1))));
    }
    return some;
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(v -> v).toArray();
    Arrays.sort(sorted);
    int n = sorted.length;
    return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  int size() {
    return age.length;
  }

  double age(int i) {
    return age[i];
  }

  double lnArea(int i) {
    return lnArea[i];
  }

  /** Returns the variance of an evening's ln area by photos and few plants. */
  double variance(int i) {
    return variance[i];
  }

  double lastAge() {
    return age[age.length - 1];
  }
}
