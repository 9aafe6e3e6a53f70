// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Tells holes that something dark lies over, as a sheet, a bag, or red leaf where the book has a
 * green crop: no leaf of the crop shows there, but no board does either, and such a hole is not
 * empty.
 */
final class CoveredHoles {
  /** The board is looked at between these radii of the hole. */
  private static final double FROM = 1.25;

  private static final double TO = 2;

  /** So much of that ring must be free of leaf, or what shows of it may be its shade. */
  private static final double LEAST_FREE = 0.6;

  /** Sun outshines shade by less than ten times; what is darker beside it is no board. */
  private static final double DARK = 0.1;

  /** Sites with more leaf are plants, however dark it is about them, cm2. */
  private static final double LEAF_CM2 = 2;

  private final DeckImage deck;
  private final Layout layout;
  private final Canopy canopy;

  private CoveredHoles(DeckImage deck, Layout layout, Canopy canopy) {
    this.deck = deck;
    this.layout = layout;
    this.canopy = canopy;
  }

  /**
   * Holds the sites that are covered.
   *
   * @param sites of a board, in the order of its layout
   * @param deck its deck picture
   * @param layout its layout; the cells of a tray have no board about them
   * @param canopy its canopy
   * @return the sites
   */
  static List<SiteMeasure> hold(
      List<SiteMeasure> sites, DeckImage deck, Layout layout, Canopy canopy) {
    return layout.grid().close() ? sites : new CoveredHoles(deck, layout, canopy).hold(sites);
  }

  private List<SiteMeasure> hold(List<SiteMeasure> sites) {
    double dark = DARK * canopy.light().boardGreen();
    return sites.stream().map(s -> isCovered(s, dark) ? held(s) : s).toList();
  }

  private boolean isCovered(SiteMeasure site, double dark) {
    if (site.projectedAreaCm2().orElse(LEAF_CM2) >= LEAF_CM2) {
      return false;
    }
    double light = boardAbout(deck.toPx(layout.grid().centre(site.site())));
    return light >= 0 && light < dark;
  }

  private static SiteMeasure held(SiteMeasure site) {
    return SiteCrops.heldSite(
        site.site(),
        "something dark that is no leaf of its crop lies over it; see what it is, take it away and"
            + " photograph it again");
  }

  /** Returns the median green light about a hole, linear; -1 where it does not show enough. */
  private double boardAbout(PointPx hole) {
    double radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
    double reach = TO * radius;
    byte[] rgb = deck.image().rgb();
    int width = deck.image().width();
    int[] levels = new int[256];
    int all = 0;
    int free = 0;
    for (int y = (int) (hole.yPx() - reach); y <= hole.yPx() + reach; y++) {
      for (int x = (int) (hole.xPx() - reach); x <= hole.xPx() + reach; x++) {
        double off = Math.hypot(x - hole.xPx(), y - hole.yPx());
        if (off >= FROM * radius && off <= reach) {
          all++;
          boolean on = x >= 0 && y >= 0 && x < width && y < deck.image().height();
          if (on && deck.seen(x, y) && canopy.coverage()[y * width + x] == 0) {
            free++;
            levels[rgb[3 * (y * width + x) + 1] & 255]++;
          }
        }
      }
    }
    return free == 0 || free < LEAST_FREE * all ? -1 : Srgb.linear((byte) median(levels, free));
  }

  private static int median(int[] levels, int n) {
    int under = 0;
    int level = -1;
    while (2 * under < n) {
      under += levels[++level];
    }
    return level;
  }
}
