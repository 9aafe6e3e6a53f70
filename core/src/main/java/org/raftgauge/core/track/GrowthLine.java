// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;

/**
 * A least squares line through points of ln(area) by day.
 *
 * @param slope 1/day
 * @param spread sum of squared distances of the days from their mean
 */
record GrowthLine(double slope, double spread) {

  /** Lays a line through two or more points. */
  static GrowthLine of(List<CommonGrowth.Point> points) {
    double day = points.stream().mapToDouble(CommonGrowth.Point::day).average().orElseThrow();
    double xx = 0;
    double xy = 0;
    for (CommonGrowth.Point point : points) {
      xx += (point.day() - day) * (point.day() - day);
      xy += (point.day() - day) * point.lnArea();
    }
    return new GrowthLine(xy / xx, xx);
  }
}
