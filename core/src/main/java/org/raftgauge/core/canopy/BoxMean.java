// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** Means over squares; beyond the picture nothing counts. */
final class BoxMean {

  private BoxMean() {}

  /** Averages over the square of half side {@code reach} about each pixel. */
  static float[] of(float[] values, int width, int height, int reach) {
    float[] sums = BoxFilter.sum(values, width, height, reach);
    for (int y = 0; y < height; y++) {
      int rows = Math.min(height - 1, y + reach) - Math.max(0, y - reach) + 1;
      for (int x = 0; x < width; x++) {
        int columns = Math.min(width - 1, x + reach) - Math.max(0, x - reach) + 1;
        sums[y * width + x] /= rows * columns;
      }
    }
    return sums;
  }
}
