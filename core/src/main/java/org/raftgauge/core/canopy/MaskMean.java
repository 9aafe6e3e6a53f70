// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * Means of what a mask lets through, over squares; 0 where it lets nothing through. Running sums
 * along rows and down columns, the rows in reach kept.
 */
final class MaskMean {
  private final float[] values;
  private final boolean[] mask;
  private final int width;
  private final int height;
  private final int reach;
  private final float[][] sums;
  private final int[][] counts;
  private final double[] sum;
  private final int[] count;
  private final double[] shares;

  /** Sums and counts from a row's start to before each place, and to {@code reach} beyond it. */
  private final double[] upTo;

  private final int[] countTo;

  /** Which of the rows kept hold nothing. */
  private final boolean[] empty;

  private MaskMean(float[] values, boolean[] mask, int[] size, int reach) {
    this.values = values;
    this.mask = mask;
    this.width = size[0];
    this.height = size[1];
    this.reach = reach;
    this.sums = new float[2 * reach + 1][width];
    this.counts = new int[2 * reach + 1][width];
    this.sum = new double[width];
    this.count = new int[width];
    this.shares = shares((2 * reach + 1) * (2 * reach + 1));
    this.upTo = new double[width + 1 + 2 * reach];
    this.countTo = new int[upTo.length];
    this.empty = new boolean[2 * reach + 1];
  }

  /**
   * Averages over the square of half side {@code reach} about each pixel; size is width, height.
   */
  static float[] of(float[] values, boolean[] mask, int[] size, int reach) {
    return new MaskMean(values, mask, size, reach).means();
  }

  /** Returns one over each number of pixels up to the most; 0 for none. */
  private static double[] shares(int most) {
    double[] shares = new double[most + 1];
    for (int n = 1; n <= most; n++) {
      shares[n] = 1.0 / n;
    }
    return shares;
  }

  private float[] means() {
    float[] means = new float[values.length];
    for (int y = -reach; y < height; y++) {
      int place = Math.floorMod(y + reach, sums.length);
      if (y > reach) {
        add(place, -1); // the row that drops out was kept at the same place
      }
      empty[place] = y + reach >= height || along((y + reach) * width, place) == 0;
      add(place, 1);
      for (int x = 0; x < width && y >= 0; x++) {
        means[y * width + x] = (float) (sum[x] * shares[count[x]]);
      }
    }
    return means;
  }

  private void add(int place, int sign) {
    if (empty[place]) {
      return;
    }
    float[] rowSum = sums[place];
    int[] rowCount = counts[place];
    for (int x = 0; x < width; x++) {
      sum[x] += sign * rowSum[x];
      count[x] += sign * rowCount[x];
    }
  }

  /**
   * Writes the sums over stretches of one row, as differences of sums from its start on; returns
   * how many pixels the mask lets through, where there are none without writing.
   */
  private int along(int row, int place) {
    double run = 0;
    int n = 0;
    for (int x = 0, to = reach + 1; x < width; x++, to++) {
      if (mask[row + x]) {
        run += values[row + x];
        n++;
      }
      upTo[to] = run;
      countTo[to] = n;
    }
    if (n == 0) {
      return 0;
    }
    Arrays.fill(upTo, reach + 1 + width, upTo.length, run);
    Arrays.fill(countTo, reach + 1 + width, upTo.length, n);
    float[] rowSum = sums[place];
    int[] rowCount = counts[place];
    int across = 2 * reach + 1;
    for (int x = 0; x < width; x++) {
      rowSum[x] = (float) (upTo[x + across] - upTo[x]);
      rowCount[x] = countTo[x + across] - countTo[x];
    }
    return n;
  }
}
