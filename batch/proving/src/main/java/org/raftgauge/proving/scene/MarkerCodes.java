// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

/**
 * The AprilTag 36h11 codes 0 to 3 as a picture of 6 x 6 cells inside a black border of one cell.
 *
 * <p>Source: the 36h11 dictionary of OpenCV 4.6, read off its drawn markers; a test decodes our
 * drawing.
 */
final class MarkerCodes {
  private static final long[] CODE = {0x21a146babL, 0x92d18fe9bL, 0x7089014bbL, 0x193979e27L};

  private MarkerCodes() {}

  /** Says whether a cell is white; cells 0..7 each way, row 0 at the top, border included. */
  static boolean white(int id, int column, int row) {
    if (column < 1 || row < 1 || column > 6 || row > 6) {
      return false;
    }
    int bit = 35 - (6 * (row - 1) + column - 1);
    return (CODE[id] >> bit & 1) == 1;
  }
}
