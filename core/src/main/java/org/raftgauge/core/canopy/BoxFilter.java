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

  /** Says of each pixel whether any within the square about it is set. */
  static boolean[] any(boolean[] mask, int width, int height, int reach) {
    boolean[] rows = new boolean[mask.length];
    for (int y = 0; y < height; y++) {
      spread(mask, rows, y * width, new int[] {width, reach});
    }
    boolean[] any = new boolean[mask.length];
    int[] last = new int[width];
    Arrays.fill(last, -reach - 1);
    // A row is set where one of the rows from reach above to reach below it is.
    for (int y = -reach; y < height; y++) {
      int below = y + reach;
      for (int x = 0; x < width; x++) {
        if (below < height && rows[below * width + x]) {
          last[x] = below;
        }
        if (y >= 0) {
          any[y * width + x] = last[x] >= y - reach;
        }
      }
    }
    return any;
  }

  /** Sets in {@code to} what lies within a reach of a set pixel of the same row. */
  private static void spread(boolean[] from, boolean[] to, int row, int[] widthAndReach) {
    int width = widthAndReach[0];
    int reach = widthAndReach[1];
    int done = 0;
    for (int x = 0; x < width; x++) {
      if (from[row + x]) {
        int end = Math.min(width, x + reach + 1);
        for (int i = Math.max(done, x - reach); i < end; i++) {
          to[row + i] = true;
        }
        done = end;
      }
    }
  }
}
