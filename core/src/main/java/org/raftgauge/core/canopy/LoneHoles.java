// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Holes whose leaf stays within them though the board's plants have outgrown theirs: a stunted
 * plant, or the plug of an empty hole, which no other hole shows.
 */
final class LoneHoles {
  /** Beyond the hole, to twice its radius, a plant that has outgrown it covers more than this. */
  private static final double BEYOND = 0.12;

  private static final double FROM = 1.25;

  private static final double TO = 2;

  /** The other plants cover this many times the area of a hole (working value). */
  private static final double TIMES = 6;

  private LoneHoles() {}

  /** How much of some pixels is leaf. */
  private static final class Share {
    private int all;
    private int leaf;

    void see(boolean isLeaf) {
      all++;
      leaf += isLeaf ? 1 : 0;
    }

    boolean isOver(double share) {
      return leaf > share * all;
    }
  }

  /** Finds them, by their place in the grid; none where plants are not much larger than holes. */
  static BitSet of(DeckImage deck, Layout layout, boolean[] leaf) {
    double radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
    BitSet lone = new BitSet();
    int planted = 0;
    int alone = 0;
    int at = 0;
    for (SiteId site : layout.grid().sites()) {
      PointPx centre = deck.toPx(layout.grid().centre(site));
      Share inside = new Share();
      Share beyond = new Share();
      HoleDisc.each(
          deck,
          centre,
          TO * radius,
          (i, px) -> {
            if (px < radius) {
              inside.see(leaf[i]);
            } else if (px > FROM * radius) {
              beyond.see(leaf[i]);
            }
          });
      if (inside.isOver(SecondReading.SPECK)) {
        planted++;
        if (!beyond.isOver(BEYOND)) {
          lone.set(at);
          alone += inside.leaf;
        }
      }
      at++;
    }
    int all = 0;
    for (boolean is : leaf) {
      all += is ? 1 : 0;
    }
    int others = planted - lone.cardinality();
    double large = TIMES * Math.PI * radius * radius;
    return others > 0 && all - alone > large * others ? lone : new BitSet();
  }
}
