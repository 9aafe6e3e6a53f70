// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Means of what a mask lets through, over squares; 0 where it lets nothing through. A mean over
 * hundreds of pixels changes little from one to the next, so it is taken once for each block of two
 * by two. Read only.
 */
final class MaskMean {
  private final int across;
  private final float[] means;

  private MaskMean(int across, float[] means) {
    this.across = across;
    this.means = means;
  }

  /**
   * Averages over squares.
   *
   * @param values of each pixel
   * @param mask what counts
   * @param width px
   * @param reach half side of a square about a block's middle, px
   */
  static MaskMean of(float[] values, boolean[] mask, int width, int reach) {
    int height = values.length / width;
    int across = (width + 1) / 2;
    int down = (height + 1) / 2;
    float[] sums = new float[across * down];
    float[] counts = new float[across * down];
    for (int y = 0, i = 0; y < height; y++) {
      int row = y / 2 * across;
      for (int x = 0; x < width; x++, i++) {
        if (mask[i]) {
          sums[row + x / 2] += values[i];
          counts[row + x / 2]++;
        }
      }
    }
    float[] means = BoxFilter.sum(sums, across, down, reach / 2);
    float[] count = BoxFilter.sum(counts, across, down, reach / 2);
    for (int b = 0; b < means.length; b++) {
      means[b] = count[b] > 0.5f ? means[b] / count[b] : 0;
    }
    return new MaskMean(across, means);
  }

  /** Returns the mean about a pixel. */
  float at(int x, int y) {
    return means[(y >> 1) * across + (x >> 1)];
  }
}
