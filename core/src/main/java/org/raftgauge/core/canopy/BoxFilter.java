// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** Running sums over squares; beyond the picture counts as nothing. */
final class BoxFilter {

  private BoxFilter() {}

  /** Sums over the square of half side {@code reach} about each pixel. */
  static float[] sum(float[] values, int width, int height, int reach) {
    float[] rows = new float[values.length];
    for (int y = 0; y < height; y++) {
      int row = y * width;
      double run = 0;
      for (int x = -reach; x < width; x++) {
        if (x + reach < width) {
          run += values[row + x + reach];
        }
        if (x - reach - 1 >= 0) {
          run -= values[row + x - reach - 1];
        }
        if (x >= 0) {
          rows[row + x] = (float) run;
        }
      }
    }
    return columns(rows, width, height, reach);
  }

  private static float[] columns(float[] rows, int width, int height, int reach) {
    float[] sums = new float[rows.length];
    double[] run = new double[width];
    for (int y = -reach; y < height; y++) {
      for (int x = 0; x < width; x++) {
        if (y + reach < height) {
          run[x] += rows[(y + reach) * width + x];
        }
        if (y - reach - 1 >= 0) {
          run[x] -= rows[(y - reach - 1) * width + x];
        }
        if (y >= 0) {
          sums[y * width + x] = (float) run[x];
        }
      }
    }
    return sums;
  }

  /**
   * Says of each pixel whether any within the square of half side {@code reach} about it is set:
   * along rows, then down columns, each pixel takes over what as many pixels on say as it speaks
   * for itself, until it speaks for the square's side.
   */
  static boolean[] any(boolean[] mask, int width, int height, int reach) {
    int side = 2 * reach + 1;
    boolean[][] rows = new boolean[height + 2 * reach][];
    for (int y = -reach; y < height + reach; y++) {
      rows[y + reach] =
          y >= 0 && y < height ? along(mask, y * width, width, reach) : new boolean[width];
    }
    for (int span = 1, step; span < side; span += step) {
      step = Math.min(span, side - span);
      for (int y = 0; y + step < rows.length; y++) {
        join(rows[y], rows[y + step], width);
      }
    }
    boolean[] any = new boolean[mask.length];
    for (int y = 0; y < height; y++) {
      System.arraycopy(rows[y], 0, any, y * width, width);
    }
    return any;
  }

  /** Says it of a row, of pixels in the row alone; what it returns may be longer. */
  private static boolean[] along(boolean[] mask, int row, int width, int reach) {
    boolean[] none = new boolean[width];
    if (Arrays.equals(mask, row, row + width, none, 0, width)) {
      return none;
    }
    int side = 2 * reach + 1;
    boolean[] line = new boolean[width + side - 1];
    boolean[] moved = new boolean[line.length];
    System.arraycopy(mask, row, line, reach, width);
    for (int span = 1, step; span < side; span += step) {
      step = Math.min(span, side - span);
      System.arraycopy(line, step, moved, 0, line.length - step);
      join(line, moved, line.length);
    }
    return line;
  }

  /** Sets in one row what is set in another. */
  private static void join(boolean[] row, boolean[] other, int n) {
    for (int x = 0; x < n; x++) {
      row[x] |= other[x];
    }
  }
}
