// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.BitSet;

/** A square mark as black and white cells, its own border included, without quiet zone. */
public final class Cells {
  private final int side;
  private final BitSet black;

  Cells(int side, BitSet black) {
    this.side = side;
    this.black = (BitSet) black.clone();
  }

  /** Returns the number of cells along a side. */
  public int side() {
    return side;
  }

  /**
   * Says whether a cell is black.
   *
   * @param column 0 to side - 1, from the left
   * @param row 0 to side - 1, from the top
   * @return true if it is
   */
  public boolean black(int column, int row) {
    if (column < 0 || row < 0 || column >= side || row >= side) {
      throw new IllegalArgumentException(
          "cell must be in 0.." + (side - 1) + ", got " + column + ", " + row);
    }
    return black.get(row * side + column);
  }
}
