// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/** Checks the order of four corners. */
final class Corners {
  private Corners() {}

  /**
   * Says whether four corners form a convex shape and go clockwise, with x to the right and y down:
   * the cross product of every two sides that follow each other is above 0.
   */
  static boolean areConvexClockwise(List<PointPx> corners) {
    for (int i = 0; i < 4; i++) {
      PointPx a = corners.get(i);
      PointPx b = corners.get((i + 1) % 4);
      PointPx c = corners.get((i + 2) % 4);
      double cross =
          (b.xPx() - a.xPx()) * (c.yPx() - b.yPx()) - (b.yPx() - a.yPx()) * (c.xPx() - b.xPx());
      if (!(cross > 0)) {
        return false;
      }
    }
    return true;
  }
}
