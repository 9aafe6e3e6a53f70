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

  /** Which of the rows kept hold anything. */
  private final boolean[] some;

  /**
   * Sets up means over the square of half side {@code reach} about each pixel; size is width,
   * height.
   */
  MaskMean(float[] values, boolean[] mask, int[] size, int reach) {
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
    this.some = new boolean[2 * reach + 1];
  }

  /**
   * Averages over the square of half side {@code reach} about each pixel; size is width, height.
   */
  static float[] of(float[] values, boolean[] mask, int[] size, int reach) {
    float[] means = new float[values.length];
    new MaskMean(values, mask, size, reach)
        .each((y, row) -> System.arraycopy(row, 0, means, y * row.length, row.length));
    return means;
  }

  /** Returns one over each number of pixels up to the most; 0 for none. */
  private static double[] shares(int most) {
    double[] shares = new double[most + 1];
    for (int n = 1; n <= most; n++) {
      shares[n] = 1.0 / n;
    }
    return shares;
  }

  /** Does something with the means of each row, which hold until the next. */
  void each(Binomial.EachRow then) {
    float[] means = new float[width];
    for (int y = -reach; y < height; y++) {
      int place = Math.floorMod(y + reach, sums.length);
      boolean comes = along(y + reach);
      if (comes || some[place]) {
        exchange(place); // the row that drops out was kept at the same place
        some[place] = comes;
      }
      if (y >= 0) {
        for (int x = 0; x < width; x++) {
          means[x] = (float) (sum[x] * shares[count[x]]);
        }
        then.change(y, means);
      }
    }
  }

  /**
   * Writes the sums from one row's start on, nothing below the picture; says whether the mask lets
   * anything through.
   */
  private boolean along(int y) {
    if (y >= height) {
      Arrays.fill(upTo, 0);
      Arrays.fill(countTo, 0);
      return false;
    }
    int row = y * width;
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
    Arrays.fill(upTo, reach + 1 + width, upTo.length, run);
    Arrays.fill(countTo, reach + 1 + width, upTo.length, n);
    return n > 0;
  }

  /** Takes a row's sums over stretches out and those of the row that was read last in. */
  private void exchange(int place) {
    float[] rowSum = sums[place];
    int[] rowCount = counts[place];
    int across = 2 * reach + 1;
    for (int x = 0; x < width; x++) {
      float now = (float) (upTo[x + across] - upTo[x]);
      sum[x] = sum[x] - rowSum[x] + now;
      rowSum[x] = now;
    }
    for (int x = 0; x < width; x++) {
      int now = countTo[x + across] - countTo[x];
      count[x] += now - rowCount[x];
      rowCount[x] = now;
    }
  }
}
