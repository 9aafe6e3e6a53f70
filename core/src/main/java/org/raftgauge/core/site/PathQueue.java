// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * Pixels in the order of their path's cost, as far as shortest paths need it: in bins no wider than
 * the shortest step, so that no pixel of the cheapest bin can still be reached more cheaply, and
 * those of one bin may come in any order.
 *
 * <p>Source: Dial 1969, Algorithm 360, CACM 12:632; bins as wide as the shortest step: Dinitz 1978
 * (both from memory).
 */
final class PathQueue {
  /** Rounding may put a cost just under a bin's rim. */
  private static final double NARROWER = 0.999;

  private static final int[] NOTHING = {};

  private final float binsPerCost;
  private int[][] bins = new int[64][0];
  private int[] sizes = new int[64];
  private int bin;
  private int last = -1;

  /**
   * Sets up an empty queue.
   *
   * @param leastStep cost of the shortest step, above 0
   */
  PathQueue(double leastStep) {
    this.binsPerCost = (float) (1 / (NARROWER * leastStep));
  }

  /**
   * Adds a pixel.
   *
   * @param cost of the path to it, at least 0 and not under the costs of the cheapest bin
   * @param at its index
   */
  void add(float cost, int at) {
    int b = (int) (cost * binsPerCost);
    if (b > last) {
      widen(b);
    }
    int n = sizes[b]++;
    if (n == bins[b].length) {
      bins[b] = Arrays.copyOf(bins[b], Math.max(64, 2 * n));
    }
    bins[b][n] = at;
  }

  private void widen(int to) {
    last = to;
    if (to >= bins.length) {
      int before = bins.length;
      bins = Arrays.copyOf(bins, 2 * to);
      sizes = Arrays.copyOf(sizes, 2 * to);
      Arrays.fill(bins, before, bins.length, NOTHING);
    }
  }

  /** Moves on to the cheapest bin that holds a pixel, and says whether there is none. */
  boolean isEmpty() {
    while (bin <= last && sizes[bin] == 0) {
      bins[bin++] = NOTHING;
    }
    return bin > last;
  }

  /** Takes a pixel out of the cheapest bin; not to be asked before {@link #isEmpty}. */
  int poll() {
    return bins[bin][--sizes[bin]];
  }
}
