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

  /** What shows in no more than this share is a leaf, even if a large one of its plant. */
  private static final double ONE_SIDE = 0.5;

  /** A neighbour must be at least this many times as large, and share this share of the outline. */
  private static final double TIMES_LARGER = 3;

  /** The same for what comes in from one side only. */
  private static final double TIMES_ITS_LEAF = 2;

  private static final double SHARED = 0.12;

  /** Between these shares of the radius of the disc of its area a plant must show. */
  private static final double NEAR = 0.45;

  private static final double FAR = 1.5;

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
      if (by == AllotCanopy.NONE || borders.areaPx(by) < TIMES_ITS_LEAF * borders.areaPx(s)) {
        continue;
      }
      boolean larger = borders.areaPx(by) >= TIMES_LARGER * borders.areaPx(s);
      double least = larger ? SURROUND : ONE_SIDE;
      if (borders.sharedFraction(s) > SHARED && surround(s, owner, borders.areaPx(s)) < least) {
        for (int i = 0; i < owner.length; i++) {
          owner[i] = owner[i] == s ? by : owner[i];
        }
      }
    }
  }

  /**
   * Share of directions in which the plant shows between about half of its radius from the foot and
   * half as much beyond it; thin stalks need not cover the ground nearer to the foot.
   */
  private double surround(short site, short[] owner, int areaPx) {
    double radius = Math.sqrt(areaPx / Math.PI);
    int hits = 0;
    for (int k = 0; k < RAYS; k++) {
      hits += shows(site, owner, 2 * Math.PI * k / RAYS, radius) ? 1 : 0;
    }
    return (double) hits / RAYS;
  }

  private boolean shows(short site, short[] owner, double angle, double radius) {
    for (double d = Math.max(1.5, NEAR * radius); d <= Math.max(2.5, FAR * radius); d++) {
      int x = (int) Math.round(feet[site].xPx() + d * Math.cos(angle));
      int y = (int) Math.round(feet[site].yPx() + d * Math.sin(angle));
      if (x >= 0 && y >= 0 && x < width && y < height && owner[y * width + x] == site) {
        return true;
      }
    }
    return false;
  }
}
