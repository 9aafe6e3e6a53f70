// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.site.SiteMeasure;

/** Makes series of areas from sights. */
final class AreasOf {
  /** Relative error of an area that comes without one; a working value. */
  private static final double USUAL_ERROR = 0.04;

  /** An area with its age. */
  record Point(double age, SiteMeasure measure) {
    double areaCm2() {
      return measure.projectedAreaCm2().orElseThrow();
    }

    double error() {
      return measure.areaErrorFraction(USUAL_ERROR * areaCm2());
    }
  }

  private AreasOf() {}

  /** Returns a plant's areas over its age; held and bare evenings are left out. */
  static Series plant(PlantSeries plant) {
    return points(
        plant.sights().stream()
            .filter(Sight::hasArea)
            .map(s -> new Point(s.ageDays(), s.measure()))
            .toList());
  }

  /** Returns the series of points in the order of age. */
  static Series points(List<Point> points) {
    boolean[] closed = new boolean[points.size()];
    for (int i = 0; i < closed.length; i++) {
      closed[i] = points.get(i).measure().closed();
    }
    return Series.of(
            points.stream().mapToDouble(Point::age).toArray(),
            points.stream().mapToDouble(Point::areaCm2).toArray())
        .withErrors(points.stream().mapToDouble(Point::error).toArray())
        .withClosed(closed);
  }
}
