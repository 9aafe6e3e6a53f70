// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.List;

/**
 * Fits a crop's height model as a grower would: {@code ln(mean height) = ln(scale) + exponent
 * ln(area)} by least squares on every third plant.
 *
 * @param scaleMm mm
 * @param exponent of the area in cm2
 * @param meanToTop mean over top height, averaged over the same plants
 */
record HeightFit(double scaleMm, double exponent, double meanToTop) {

  /** Fits the model; with under three plants or no spread of areas, an even guess is returned. */
  static HeightFit fit(List<SitePoint> points) {
    List<SitePoint> grown =
        points.stream().filter(p -> p.truth().projectedAreaCm2() > 0.3).toList();
    double n = 0;
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double sxy = 0;
    double ratio = 0;
    for (int i = 0; i < grown.size(); i += 3) {
      double x = Math.log(grown.get(i).truth().projectedAreaCm2());
      double y = Math.log(grown.get(i).truth().meanHeightMm());
      n++;
      sx += x;
      sy += y;
      sxx += x * x;
      sxy += x * y;
      ratio += grown.get(i).truth().meanHeightMm() / grown.get(i).truth().topHeightMm();
    }
    double spread = n * sxx - sx * sx;
    if (n < 3 || spread < 1e-6) {
      return new HeightFit(4, 0.5, 0.5);
    }
    double exponent = (n * sxy - sx * sy) / spread;
    return new HeightFit(Math.exp((sy - exponent * sx) / n), exponent, ratio / n);
  }
}
