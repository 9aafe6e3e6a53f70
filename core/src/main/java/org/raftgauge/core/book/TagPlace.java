// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * Where a board's QR tag sits, upright in the board's frame.
 *
 * @param xMm x of its centre, mm
 * @param yMm y of its centre, mm
 * @param sideMm outer edge of the code without its quiet zone, mm, above 0
 */
public record TagPlace(double xMm, double yMm, double sideMm) {

  /** Checks that the side is above 0. */
  public TagPlace {
    if (!(sideMm > 0)) {
      throw new IllegalArgumentException("tag side must be > 0 mm, got " + sideMm);
    }
  }
}
