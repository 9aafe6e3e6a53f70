// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * Says of each pixel whether any about it is set: along rows, then down columns, each takes over
 * what as many on say as it speaks for itself, until it speaks for all from itself to the square's
 * far side; then what the one at its near side says. All in one new array and two rows, in which
 * joining goes many pixels at a time.
 */
final class NearMask {
  private final boolean[] mask;
  private final boolean[] any;
  private final int width;
  private final int height;
  private final boolean[] row;
  private final boolean[] other;

  NearMask(boolean[] mask, int width, int height) {
    this.mask = mask;
    this.any = new boolean[mask.length];
    this.width = width;
    this.height = height;
    this.row = new boolean[width];
    this.other = new boolean[width];
  }

  /** Looks within the square of half side {@code reach} about each pixel. */
  boolean[] within(int reach) {
    for (int y = 0, from = 0; y < height; y++, from += width) {
      if (!Arrays.equals(mask, from, from + width, any, from, from + width)) {
        System.arraycopy(mask, from, row, 0, width);
        along(reach);
        System.arraycopy(row, 0, any, from, width);
      }
    }
    for (int span = 1, step; span <= reach; span += step) {
      step = Math.min(span, reach + 1 - span);
      for (int y = 0; y + step < height; y++) {
        joinRows(y, y + step);
      }
    }
    for (int y = height - 1; y > 0; y--) {
      joinRows(y, Math.max(0, y - reach));
    }
    return any;
  }

  /** Looks along the row at hand. */
  private void along(int reach) {
    for (int span = 1, step; span <= reach; span += step) {
      step = Math.min(span, reach + 1 - span);
      int left = Math.max(0, width - step);
      System.arraycopy(row, width - left, other, 0, left);
      Arrays.fill(other, left, width, false); // beyond the end nothing is set
      join();
    }
    int back = Math.min(reach, width - 1);
    System.arraycopy(row, 0, other, back, width - back);
    Arrays.fill(other, 0, back, row[0]);
    join();
  }

  /** Sets in a row of the answer what is set in another. */
  private void joinRows(int y, int from) {
    System.arraycopy(any, y * width, row, 0, width);
    System.arraycopy(any, from * width, other, 0, width);
    join();
    System.arraycopy(row, 0, any, y * width, width);
  }

  private void join() {
    for (int x = 0; x < width; x++) {
      row[x] |= other[x];
    }
  }
}
