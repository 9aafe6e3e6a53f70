// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Locale;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * By how much a fixed camera's picture lies elsewhere than in the station's reference photo, as far
 * as its boards have it in common: the middle of the picture and a turn about it.
 *
 * @param xPx to the right, px of the station's photo size
 * @param yPx down, px of the station's photo size
 * @param turnDeg clockwise in the picture, degrees
 */
public record CameraShift(double xPx, double yPx, double turnDeg) {
  /** A picture shifted by less than this share of its width is said to be in place. */
  static final double STILL_SHARE = 0.005;

  /** Reads the shift off a camera's move, for things at a depth in mm. */
  static CameraShift of(CameraMove move, RgbImage photo, double depthMm, double stationPxPerPx) {
    PointPx middle = new PointPx((photo.width() - 1) / 2.0, (photo.height() - 1) / 2.0);
    PointPx now = move.applied(middle, depthMm);
    return new CameraShift(
        stationPxPerPx * (now.xPx() - middle.xPx()),
        stationPxPerPx * (now.yPx() - middle.yPx()),
        move.turnDeg());
  }

  /** Says a shift that matters, in px of a photo. */
  List<String> notes(int photoWidthPx, double stationPxPerPx) {
    double right = xPx / stationPxPerPx;
    double down = yPx / stationPxPerPx;
    if (Math.hypot(right, down) < STILL_SHARE * photoWidthPx && Math.abs(turnDeg) < 0.5) {
      return List.of();
    }
    return List.of(
        String.format(
            Locale.ROOT,
            "the camera has moved: its picture is shifted by (%.0f, %.0f) px and turned by %.1f"
                + " degrees; corrected",
            right,
            down,
            turnDeg));
  }
}
