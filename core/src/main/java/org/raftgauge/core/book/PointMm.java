// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * A place on the deck plane, in the board's frame.
 *
 * @param xMm mm along the columns from the origin corner, finite
 * @param yMm mm along the rows from the origin corner, finite
 */
public record PointMm(double xMm, double yMm) {

  /** Checks that both coordinates are finite. */
  public PointMm {
    if (!Double.isFinite(xMm) || !Double.isFinite(yMm)) {
      throw new IllegalArgumentException("point must be finite, got " + xMm + ", " + yMm);
    }
  }
}
