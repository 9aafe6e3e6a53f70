// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.plane.DrawnDeck;

/** A board of four sites with holes, and flat leaves or films laid on it. */
final class Plants implements DrawnDeck.Look {
  static final double[] LETTUCE = {0.117, 0.296, 0.034};
  static final double[] DARK_LEAF = {0.034, 0.122, 0.025};

  /** 300 x 300 mm, sites 140 mm apart. */
  static final Layout LAYOUT =
      DrawnDeck.layout(new Board(300, 300), new SiteGrid(2, 2, 80, 80, 140, 140, 0));

  private final double board;
  private final List<double[]> discs = new ArrayList<>();
  private double shadowAt = 1e9;
  private double[] plug = {0.02, 0.02, 0.02};
  private double shelter;

  private Plants(double board) {
    this.board = board;
  }

  /** Begins a board of a linear light, 0..1. */
  static Plants on(double board) {
    return new Plants(board);
  }

  /** Lays a disc of a colour over what is there. */
  Plants disc(double xMm, double yMm, double radiusMm, double... rgb) {
    discs.add(0, new double[] {xMm, yMm, radiusMm, rgb[0], rgb[1], rgb[2]});
    return this;
  }

  /** Fills the holes with a colour. */
  Plants plugs(double... rgb) {
    plug = rgb;
    return this;
  }

  /** Darkens the ground at the foot of each disc by a share, fading out over six millimetres. */
  Plants shelter(double share) {
    shelter = share;
    return this;
  }

  /** Darkens all to the right of a slanting line to a fifth. */
  Plants shadow(double fromXMm) {
    shadowAt = fromXMm;
    return this;
  }

  @Override
  public void at(double xMm, double yMm, double[] rgb) {
    colour(xMm, yMm, rgb);
    if (xMm + 0.3 * yMm > shadowAt) {
      for (int c = 0; c < 3; c++) {
        rgb[c] *= 0.2;
      }
    }
  }

  private void colour(double x, double y, double[] rgb) {
    for (double[] d : discs) {
      if (Math.hypot(x - d[0], y - d[1]) < d[2]) {
        System.arraycopy(d, 3, rgb, 0, 3);
        return;
      }
    }
    boolean on = x >= 0 && y >= 0 && x < 300 && y < 300;
    java.util.Arrays.fill(rgb, on ? board : 0.03);
    if (hole(x, y)) {
      System.arraycopy(plug, 0, rgb, 0, 3);
    }
    for (double[] d : discs) {
      double off = Math.hypot(x - d[0], y - d[1]) - d[2];
      double sheltered = shelter * Math.max(0, 1 - off / 6);
      for (int c = 0; c < 3; c++) {
        rgb[c] *= 1 - sheltered;
      }
    }
  }

  private static boolean hole(double x, double y) {
    for (SiteId site : LAYOUT.grid().sites()) {
      PointMm c = LAYOUT.grid().centre(site);
      if (Math.hypot(x - c.xMm(), y - c.yMm()) < 20) {
        return true;
      }
    }
    return false;
  }
}
