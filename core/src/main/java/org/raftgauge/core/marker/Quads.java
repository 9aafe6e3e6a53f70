// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/** Measures four-cornered outlines. */
final class Quads {

  private Quads() {}

  /** Returns the mean of the corners. */
  static PointPx centre(List<PointPx> corners) {
    double x = 0;
    double y = 0;
    for (PointPx p : corners) {
      x += p.xPx() / corners.size();
      y += p.yPx() / corners.size();
    }
    return new PointPx(x, y);
  }

  /** Returns the mean length of the sides, px. */
  static double meanSidePx(List<PointPx> corners) {
    double sum = 0;
    for (int i = 0; i < corners.size(); i++) {
      sum += corners.get(i).distancePx(corners.get((i + 1) % corners.size()));
    }
    return sum / corners.size();
  }

  /** Returns the longest distance between corners of the same number, px. */
  static double farthestPx(List<PointPx> a, List<PointPx> b) {
    double far = 0;
    for (int i = 0; i < a.size(); i++) {
      far = Math.max(far, a.get(i).distancePx(b.get(i)));
    }
    return far;
  }
}
