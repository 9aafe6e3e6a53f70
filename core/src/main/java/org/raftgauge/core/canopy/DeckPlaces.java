// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Tells of each deck pixel what is fixed there: a planting hole, a mark, or bare board. Owns its
 * arrays; read only.
 */
final class DeckPlaces {
  private final DeckImage deck;
  private final Layout layout;
  private final boolean[] hole;
  private final boolean[] plug;
  private final double holePx;

  private DeckPlaces(DeckImage deck, Layout layout, boolean[] hole, boolean[] plug) {
    this.deck = deck;
    this.layout = layout;
    this.hole = hole;
    this.plug = plug;
    this.holePx = holePx(deck, layout);
  }

  static DeckPlaces of(DeckImage deck, Layout layout) {
    int n = deck.image().width() * deck.image().height();
    boolean[] hole = new boolean[n];
    double radius = holePx(deck, layout) / 2 + 1;
    for (SiteId site : layout.grid().sites()) {
      disc(deck, layout.grid().centre(site), radius, hole);
    }
    boolean[] plug = layout.grid().close() ? cells(deck, layout.grid()) : hole;
    return new DeckPlaces(deck, layout, hole, plug);
  }

  /** Returns where a planting hole lies under the canopy. */
  boolean[] hole() {
    return hole;
  }

  /** Returns where a plug may show: in the holes; in a tray, whose cells may be wide, anywhere. */
  boolean[] plug() {
    return plug;
  }

  /** Works out where there is nothing but board. */
  boolean[] bareBoard() {
    boolean[] bare = new boolean[hole.length];
    PointPx from = deck.toPx(new PointMm(0, 0));
    PointPx to = deck.toPx(new PointMm(layout.board().widthMm(), layout.board().lengthMm()));
    for (int y = (int) from.yPx() + 3; y < to.yPx() - 2; y++) {
      int row = y * deck.image().width();
      Arrays.fill(bare, row + (int) from.xPx() + 3, row + (int) to.xPx() - 2, true);
    }
    boolean[] marks = marks(deck, layout);
    for (int i = 0; i < bare.length; i++) {
      marks[i] |= hole[i];
      bare[i] &= !marks[i];
    }
    return bare;
  }

  /** Returns the diameter of a hole, px. */
  double holePx() {
    return holePx;
  }

  private static double holePx(DeckImage deck, Layout layout) {
    return layout.grid().holeMm() / deck.mmPerPx();
  }

  private static boolean[] cells(DeckImage deck, SiteGrid grid) {
    boolean[] cells = new boolean[deck.image().width() * deck.image().height()];
    double radius = Math.hypot(grid.pitchXMm(), grid.pitchYMm()) / 2 / deck.mmPerPx();
    grid.sites().forEach(site -> disc(deck, grid.centre(site), radius, cells));
    return cells;
  }

  private static boolean[] marks(DeckImage deck, Layout layout) {
    boolean[] marks = new boolean[deck.image().width() * deck.image().height()];
    for (PointMm c : layout.markers().map(CornerMarkers::centresMm).orElse(List.of())) {
      disc(deck, c, 0.8 * layout.markers().orElseThrow().sideMm() / deck.mmPerPx(), marks);
    }
    layout
        .tag()
        .ifPresent(
            t ->
                disc(
                    deck, new PointMm(t.xMm(), t.yMm()), 0.8 * t.sideMm() / deck.mmPerPx(), marks));
    layout
        .orientationMark()
        .ifPresent(
            m ->
                disc(
                    deck,
                    new PointMm(m.xMm(), m.yMm()),
                    0.6 * m.diameterMm() / deck.mmPerPx(),
                    marks));
    return marks;
  }

  private static void disc(DeckImage deck, PointMm at, double radius, boolean[] mask) {
    PointPx c = deck.toPx(at);
    int bottom = (int) Math.min(deck.image().height() - 1.0, c.yPx() + radius);
    int right = (int) Math.min(deck.image().width() - 1.0, c.xPx() + radius);
    for (int y = (int) Math.max(0, c.yPx() - radius); y <= bottom; y++) {
      for (int x = (int) Math.max(0, c.xPx() - radius); x <= right; x++) {
        double dx = x - c.xPx();
        double dy = y - c.yPx();
        mask[y * deck.image().width() + x] |= dx * dx + dy * dy <= radius * radius;
      }
    }
  }
}
