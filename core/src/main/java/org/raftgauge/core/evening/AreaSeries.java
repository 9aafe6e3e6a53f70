// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;

/** Makes series of areas: of a plant, or of the median of several. */
final class AreaSeries {
  /** Relative error of an area that comes without one; a working value. */
  private static final double USUAL_ERROR = 0.04;

  private record Point(double age, double areaCm2, double error, boolean closed) {}

  private AreaSeries() {}

  /** Returns a plant's areas over its age; held and bare evenings are left out. */
  static Series of(PlantSeries plant) {
    return series(plant.sights().stream().filter(Sight::hasArea).map(AreaSeries::point).toList());
  }

  /**
   * Returns the median plant's area, evening by evening; closed where at least half of the plants
   * are.
   */
  static Series median(List<PlantSeries> plants) {
    NavigableMap<LocalDate, List<Point>> evenings = new TreeMap<>();
    for (PlantSeries plant : plants) {
      for (Sight sight : plant.sights()) {
        if (sight.hasArea()) {
          evenings.computeIfAbsent(sight.evening(), e -> new ArrayList<>()).add(point(sight));
        }
      }
    }
    return series(evenings.values().stream().map(AreaSeries::middle).toList());
  }

  private static Point point(Sight sight) {
    double error = sight.measure().areaErrorFraction(USUAL_ERROR * sight.areaCm2());
    return new Point(sight.ageDays(), sight.areaCm2(), error, sight.measure().closed());
  }

  private static Point middle(List<Point> points) {
    List<Point> sorted =
        points.stream().sorted(Comparator.comparingDouble(Point::areaCm2)).toList();
    int n = sorted.size();
    double area = (sorted.get((n - 1) / 2).areaCm2() + sorted.get(n / 2).areaCm2()) / 2;
    double age = points.stream().mapToDouble(Point::age).average().orElseThrow();
    long closed = points.stream().filter(Point::closed).count();
    return new Point(age, area, sorted.get(n / 2).error(), 2 * closed >= n);
  }

  private static Series series(List<Point> points) {
    boolean[] closed = new boolean[points.size()];
    for (int i = 0; i < closed.length; i++) {
      closed[i] = points.get(i).closed();
    }
    return Series.of(
            points.stream().mapToDouble(Point::age).toArray(),
            points.stream().mapToDouble(Point::areaCm2).toArray())
        .withErrors(points.stream().mapToDouble(Point::error).toArray())
        .withClosed(closed);
  }
}
