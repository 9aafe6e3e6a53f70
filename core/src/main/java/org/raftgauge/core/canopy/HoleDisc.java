// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/** The seen pixels of a deck picture within a disc. */
final class HoleDisc {
  private HoleDisc() {}

  /** Told of each pixel. */
  interface Visit {
    /**
     * Takes a pixel.
     *
     * @param i its index in the deck picture
     * @param px its distance from the disc's centre
     */
    void at(int i, double px);
  }

  /** Visits each pixel within a radius of a place that the photo shows, row by row. */
  static void each(DeckImage deck, PointPx centre, double radiusPx, Visit visit) {
    int width = deck.image().width();
    int bottom = (int) Math.min(deck.image().height() - 1.0, centre.yPx() + radiusPx);
    int right = (int) Math.min(width - 1.0, centre.xPx() + radiusPx);
    for (int y = (int) Math.max(0, centre.yPx() - radiusPx); y <= bottom; y++) {
      for (int x = (int) Math.max(0, centre.xPx() - radiusPx); x <= right; x++) {
        double dx = x - centre.xPx();
        double dy = y - centre.yPx();
        double px = Math.sqrt(dx * dx + dy * dy);
        if (px < radiusPx && deck.seen(x, y)) {
          visit.at(y * width + x, px);
        }
      }
    }
  }
}
