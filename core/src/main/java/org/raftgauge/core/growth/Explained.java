// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import org.raftgauge.core.leastsquares.Points;

/** The share of the variance of ln area that a curve explains. */
final class Explained {
  private Explained() {}

  /** Returns 1 - residual over total sum of squares of ln area; open, counted points only. */
  static double share(GrowthCurve curve, Points points, Series series) {
    double mean = 0;
    int n = 0;
    for (int i = 0; i < series.size(); i++) {
      if (counts(points, i)) {
        mean += series.lnArea(i);
        n++;
      }
    }
    mean /= n;
    double residual = 0;
    double total = 0;
    for (int i = 0; i < series.size(); i++) {
      if (counts(points, i)) {
        residual += Math.pow(series.lnArea(i) - curve.lnArea(series.dat(i)), 2);
        total += Math.pow(series.lnArea(i) - mean, 2);
      }
    }
    return total > 0 ? 1 - residual / total : 0;
  }

  private static boolean counts(Points points, int i) {
    return points.weight(i) > 0 && !points.isLowerBound(i);
  }
}
