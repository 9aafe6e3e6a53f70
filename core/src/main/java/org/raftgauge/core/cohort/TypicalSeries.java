// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.raftgauge.core.growth.Series;

/** The medians of a cohort's ln areas by day, from which its curve's first guess comes. */
final class TypicalSeries {
  /** Bins over the span of days: finer than daily photos of a whole cycle. */
  private static final int BINS = 60;

  private record Point(double dat, double lnArea) {}

  private TypicalSeries() {}

  /** Returns medians of day and area; closed plants count with their bounds. */
  static Series of(List<Series> plants) {
    List<Point> points = new ArrayList<>();
    for (Series plant : plants) {
      for (int i = 0; i < plant.size(); i++) {
        points.add(new Point(plant.dat(i), plant.lnArea(i)));
      }
    }
    points.sort(Comparator.comparingDouble(Point::dat));
    List<Point> medians = new ArrayList<>();
    double width = (points.get(points.size() - 1).dat() - points.get(0).dat()) / BINS;
    int from = 0;
    for (int i = 1; i <= points.size(); i++) {
      boolean ends = i == points.size() || points.get(i).dat() > points.get(from).dat() + width;
      if (ends) {
        medians.add(median(points.subList(from, i)));
        from = i;
      }
    }
    return Series.of(
        medians.stream().mapToDouble(Point::dat).toArray(),
        medians.stream().mapToDouble(p -> Math.exp(p.lnArea())).toArray());
  }

  private static Point median(List<Point> bin) {
    List<Double> areas = bin.stream().map(Point::lnArea).sorted().toList();
    int n = areas.size();
    double middle = (areas.get((n - 1) / 2) + areas.get(n / 2)) / 2;
    return new Point(bin.get(n / 2).dat(), middle);
  }
}
