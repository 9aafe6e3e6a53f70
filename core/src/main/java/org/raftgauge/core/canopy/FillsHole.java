// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Finds sites where canopy is as good as the disc of the planting hole, and nearly as round: then
 * it may be the plug that shows.
 */
final class FillsHole {
  /** A young plant leaves more of its hole open than this. */
  private static final double FULL = 0.8;

  /** Beyond the hole, out to twice its radius, a plant that fills it covers more than this. */
  private static final double BEYOND = 0.12;

  private FillsHole() {}

  static BitSet sites(DeckImage deck, Layout layout, boolean[] leaf) {
    BitSet fills = new BitSet();
    int at = 0;
    for (SiteId site : layout.grid().sites()) {
      PointPx centre = deck.toPx(layout.grid().centre(site));
      double radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
      double inside = share(deck, leaf, centre, new double[] {0, 0.8 * radius});
      double beyond = share(deck, leaf, centre, new double[] {1.2 * radius, 2 * radius});
      fills.set(
          at++,
          inside > FULL
              && beyond < BEYOND
              && PlugDisc.nearlyRound(deck, layout.grid().holeMm(), leaf, centre));
    }
    return fills;
  }

  /** Share of leaf between two radii. */
  private static double share(DeckImage deck, boolean[] leaf, PointPx c, double[] radii) {
    int n = 0;
    int hits = 0;
    for (int y = (int) Math.max(0, c.yPx() - radii[1]);
        y <= c.yPx() + radii[1] && y < deck.image().height();
        y++) {
      for (int x = (int) Math.max(0, c.xPx() - radii[1]);
          x <= c.xPx() + radii[1] && x < deck.image().width();
          x++) {
        double dx = x - c.xPx();
        double dy = y - c.yPx();
        double square = dx * dx + dy * dy;
        if (square >= radii[0] * radii[0] && square <= radii[1] * radii[1]) {
          n++;
          hits += leaf[y * deck.image().width() + x] ? 1 : 0;
        }
      }
    }
    return n == 0 ? 0 : (double) hits / n;
  }
}
