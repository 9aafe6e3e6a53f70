// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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

  /** What all areas of an evening are off together by light and pose; a working value. */
  private static final double EVENING_SD = 0.003;

  /** A median's standard error over a mean's, of normal values: root of pi / 2. */
  private static final double MEDIAN = Math.sqrt(Math.PI / 2);

  /** Standard deviation over the median of absolute departures, of normal values. */
  private static final double MAD = 1.4826;

  private final double[] age;
  private final double[] lnArea;
  private final double[] variance;

  private CommonPath(double[] age, double[] lnArea, double[] variance) {
    this.age = age;
    this.lnArea = lnArea;
    this.variance = variance;
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
    return path(evenings, own);
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

  private static CommonPath path(Map<Long, Evening> evenings, double[] own) {
    List<Double> offs = new ArrayList<>();
    for (Evening evening : evenings.values()) {
      evening.points.forEach(q -> offs.add(Math.abs(q[2] - own[(int) q[0]] - evening.level)));
    }
    double sd = offs.isEmpty() ? 0 : MAD * median(offs);
    List<Map.Entry<Long, Evening>> kept = thinned(List.copyOf(evenings.entrySet()));
    int n = kept.size();
    CommonPath path = new CommonPath(new double[n], new double[n], new double[n]);
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
