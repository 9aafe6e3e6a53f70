// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * The size of a floating board.
 *
 * @param widthMm along the columns (x), mm, above 0
 * @param lengthMm along the rows (y), mm, above 0
 */
public record Board(double widthMm, double lengthMm) {

  /** Checks that both sizes are above 0. */
  public Board {
    if (!(widthMm > 0 && lengthMm > 0 && widthMm < 1e5 && lengthMm < 1e5)) {
      throw new IllegalArgumentException(
          "board must be > 0 mm each way, got " + widthMm + " x " + lengthMm);
    }
  }
}
