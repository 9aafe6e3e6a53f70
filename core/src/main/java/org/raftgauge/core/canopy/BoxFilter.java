// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** Running sums over squares; beyond the picture counts as nothing. */
final class BoxFilter {

  /** So many rows to either side are set as quickly as they are counted. */
  private static final int FEW_ROWS = 8;

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
    return reach > FEW_ROWS
        ? anyFar(mask, width, height, reach)
        : anyNear(mask, width, height, reach);
  }

  /** Spreads along rows, then up and down by counting the rows since one was set. */
  private static boolean[] anyFar(boolean[] mask, int width, int height, int reach) {
    boolean[] any = new boolean[mask.length];
    for (int y = 0; y < height; y++) {
      int end = (y + 1) * width;
      for (int i = y * width; i < end; i++) {
        if (mask[i]) {
          int from = Math.max(y * width, i - reach);
          while (i < end && mask[i]) {
            i++;
          }
          Arrays.fill(any, from, Math.min(end, i + reach), true);
        }
      }
    }
    boolean[] wide = any.clone();
    for (int step = 1; step >= -1; step -= 2) {
      int[] since = new int[width];
      Arrays.fill(since, reach);
      for (int y = step > 0 ? 0 : height - 1; y >= 0 && y < height; y += step) {
        for (int x = 0, i = y * width; x < width; x++, i++) {
          since[x] = wide[i] ? 0 : since[x] + 1;
          any[i] |= since[x] <= reach;
        }
      }
    }
    return any;
  }

  private static boolean[] anyNear(boolean[] mask, int width, int height, int reach) {
    boolean[] any = new boolean[mask.length];
    for (int y = 0; y < height; y++) {
      int end = (y + 1) * width;
      for (int i = y * width; i < end; i++) {
        if (mask[i]) {
          int first = i;
          while (i < end && mask[i]) {
            i++;
          }
          int left = Math.max(y * width, first - reach) - y * width;
          int right = Math.min(end, i + reach) - y * width;
          for (int v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
            Arrays.fill(any, v * width + left, v * width + right, true);
          }
        }
      }
    }
    return any;
  }
}
