// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * A place in a picture; integer coordinates are pixel centres.
 *
 * @param xPx px to the right, finite
 * @param yPx px downward, finite
 */
public record PointPx(double xPx, double yPx) {

  /** Checks that both coordinates are finite. */
  public PointPx {
    if (!Double.isFinite(xPx) || !Double.isFinite(yPx)) {
      throw new IllegalArgumentException("point must be finite, got " + xPx + ", " + yPx);
    }
  }

  /**
   * Returns the distance to another place.
   *
   * @param other the other place
   * @return distance in px, at least 0
   */
  public double distancePx(PointPx other) {
    return Math.hypot(xPx - other.xPx, yPx - other.yPx);
  }
}
