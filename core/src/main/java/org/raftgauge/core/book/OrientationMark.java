// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * A mark that tells a board's origin end from its far end where the grid looks the same after half
 * a turn: a notch or a dot of paint.
 *
 * @param xMm x of its centre, mm
 * @param yMm y of its centre, mm
 * @param diameterMm its diameter, mm, above 0
 * @param look what sets it off from the board
 */
public record OrientationMark(double xMm, double yMm, double diameterMm, Look look) {

  /** What sets a mark off from the board. */
  public enum Look {
    /** Darker than the board: a notch, a hole, dark paint. */
    DARK,
    /** Lighter than the board: white paint on a dark board. */
    LIGHT,
    /** A saturated colour of any hue that is not leaf green. */
    COLOURED
  }

  /** Checks that the diameter is above 0. */
  public OrientationMark {
    if (!(diameterMm > 0)) {
      throw new IllegalArgumentException("mark diameter must be > 0 mm, got " + diameterMm);
    }
  }
}
