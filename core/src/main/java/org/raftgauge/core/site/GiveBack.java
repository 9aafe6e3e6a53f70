// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import org.raftgauge.core.pixels.PointPx;

/**
 * Gives a leaf that hangs over an empty hole back to the plant it grows on. A plant surrounds its
 * foot; a neighbour's leaf comes in from one side.
 */
final class GiveBack {
  private static final int RAYS = 16;

  /**
   * A plant shows in at least this share of the directions about its foot, a leaf from one side in
   * about half of them.
   */
  private static final double SURROUND = 0.7;

  /** A neighbour must be at least this many times as large, and share this share of the outline. */
  private static final double TIMES_LARGER = 3;

  private static final double SHARED = 0.12;

  private final int width;
  private final int height;
  private final PointPx[] feet;

  GiveBack(int width, int height, PointPx[] feet) {
    this.width = width;
    this.height = height;
    this.feet = feet;
  }

  /** Changes the owner of overhangs in place. */
  void overhangs(short[] owner) {
    Borders borders = Borders.of(width, height, owner, feet.length);
    for (short s = 0; s < feet.length; s++) {
      short by = borders.chiefNeighbour(s);
      if (by == AllotCanopy.NONE || borders.areaPx(by) < TIMES_LARGER * borders.areaPx(s)) {
        continue;
      }
      if (borders.sharedFraction(s) > SHARED && surround(s, owner, borders.areaPx(s)) < SURROUND) {
        for (int i = 0; i < owner.length; i++) {
          owner[i] = owner[i] == s ? by : owner[i];
        }
      }
    }
  }

  /**
   * Share of directions in which the plant covers the ground at a third of its radius from the
   * foot.
   */
  private double surround(short site, short[] owner, int areaPx) {
    double reach = Math.max(1.5, 0.45 * Math.sqrt(areaPx / Math.PI));
    int hits = 0;
    for (int k = 0; k < RAYS; k++) {
      double angle = 2 * Math.PI * k / RAYS;
      int x = (int) Math.round(feet[site].xPx() + reach * Math.cos(angle));
      int y = (int) Math.round(feet[site].yPx() + reach * Math.sin(angle));
      if (x >= 0 && y >= 0 && x < width && y < height && owner[y * width + x] == site) {
        hits++;
      }
    }
    return (double) hits / RAYS;
  }
}
