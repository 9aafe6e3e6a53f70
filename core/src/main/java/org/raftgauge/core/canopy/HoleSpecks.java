// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Takes from a canopy the specks and thin arcs in planting holes whose plugs could pass for leaf.
 *
 * <p>The rim of such a plug is mixed with the board, and compression spreads its colour: here and
 * there a pixel or a line of them looks more like leaf than like plug. Leaf has some width: what
 * nowhere holds a small square, lies in a hole and is beside no leaf that does, is none.
 */
final class HoleSpecks {
  /** Side of the square that leaf holds, mm (working value: the width of a small seed leaf). */
  private static final double WIDTH_MM = 2.5;

  /** Sides of the square, px. */
  private static final int LEAST_SIDE = 2;

  private static final int MOST_SIDE = 3;

  /** A hole's rim is mixed with the board, and bleeds in compression, this far, px. */
  private static final double RIM_PX = 3;

  /** A thin tip of a leaf breaks off by this much at most, px. */
  private static final int BESIDE_PX = 2;

  private final boolean[] leaf;
  private final int width;
  private final double radius;
  private final int side;

  private HoleSpecks(DeckImage deck, Layout layout, boolean[] leaf) {
    this.leaf = leaf;
    this.width = deck.image().width();
    this.radius = layout.grid().holeMm() / 2 / deck.mmPerPx() + RIM_PX;
    this.side =
        (int) Math.max(LEAST_SIDE, Math.min(MOST_SIDE, Math.round(WIDTH_MM / deck.mmPerPx())));
  }

  /**
   * Takes the specks away.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param leaf the canopy, changed in place
   */
  static void drop(DeckImage deck, Layout layout, boolean[] leaf) {
    HoleSpecks specks = new HoleSpecks(deck, layout, leaf);
    for (SiteId site : layout.grid().sites()) {
      specks.drop(deck.toPx(layout.grid().centre(site)));
    }
  }

  private void drop(PointPx hole) {
    int left = (int) Math.max(0, hole.xPx() - radius - BESIDE_PX);
    int top = (int) Math.max(0, hole.yPx() - radius - BESIDE_PX);
    int across = (int) Math.min(width - 1.0, hole.xPx() + radius + BESIDE_PX) - left + 1;
    int down =
        (int) Math.min(Math.floorDiv(leaf.length, width) - 1.0, hole.yPx() + radius + BESIDE_PX)
            - top
            + 1;
    if (across < side || down < side) {
      return; // off the picture
    }
    boolean[] near = new boolean[across * down];
    for (int y = 0; y < down; y++) {
      System.arraycopy(leaf, (y + top) * width + left, near, y * across, across);
    }
    boolean[] sound = sound(near, across, new PointPx(hole.xPx() - left, hole.yPx() - top));
    boolean[] kept = BoxFilter.any(sound, across, down, BESIDE_PX);
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        leaf[(y + top) * width + x + left] &= kept[y * across + x];
      }
    }
  }

  /** Returns the parts that reach out of the hole or are as wide as leaf somewhere. */
  private boolean[] sound(boolean[] near, int across, PointPx hole) {
    Parts parts = Parts.of(near, across, near.length / across);
    boolean[] is = new boolean[parts.count()];
    for (int i = 0; i < near.length; i++) {
      if (near[i] && !is[parts.label(i)]) {
        double dx = i % across - hole.xPx();
        double dy = Math.floorDiv(i, across) - hole.yPx();
        is[parts.label(i)] = dx * dx + dy * dy > radius * radius || square(near, i, across);
      }
    }
    boolean[] sound = new boolean[near.length];
    for (int i = 0; i < near.length; i++) {
      sound[i] = near[i] && is[parts.label(i)];
    }
    return sound;
  }

  /** Says whether a pixel is the upper left one of a square of leaf. */
  private boolean square(boolean[] near, int at, int across) {
    if (at % across > across - side || at + (side - 1) * across + side > near.length) {
      return false;
    }
    for (int k = 0; k < side * side; k++) {
      if (!near[at + Math.floorDiv(k, side) * across + k % side]) {
        return false;
      }
    }
    return true;
  }
}
