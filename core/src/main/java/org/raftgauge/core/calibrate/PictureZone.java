// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.Locale;
import org.raftgauge.core.pixels.PointPx;

/** A part of the picture that a calibration should have points in. */
public enum PictureZone {
  /** The quarter by quarter at the top left. */
  TOP_LEFT(0, 0),
  /** The quarter by quarter at the top right. */
  TOP_RIGHT(1, 0),
  /** The quarter by quarter at the bottom right. */
  BOTTOM_RIGHT(1, 1),
  /** The quarter by quarter at the bottom left. */
  BOTTOM_LEFT(0, 1);

  /** Share of the picture's width and height that a corner zone takes; a working value. */
  private static final double SHARE = 0.25;

  private final int right;
  private final int bottom;

  PictureZone(int right, int bottom) {
    this.right = right;
    this.bottom = bottom;
  }

  /**
   * Says whether the zone holds a place.
   *
   * @param p the place
   * @param widthPx width of the picture, px
   * @param heightPx height of the picture, px
   * @return true if it does
   */
  public boolean has(PointPx p, int widthPx, int heightPx) {
    double x = right == 1 ? widthPx - 1 - p.xPx() : p.xPx();
    double y = bottom == 1 ? heightPx - 1 - p.yPx() : p.yPx();
    return x < SHARE * widthPx && y < SHARE * heightPx;
  }

  /** Returns its name in words: {@code top left}. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
