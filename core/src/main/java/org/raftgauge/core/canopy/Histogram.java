// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** Counts values in equal bins: a median of millions to a bin's width, in one pass. */
final class Histogram {
  private static final int BINS = 1 << 14;

  private final int[] counts;
  private final float binsPerUnit;
  private int n;

  /**
   * Sets up an empty one.
   *
   * @param most values are 0 to this; larger ones count as this
   */
  Histogram(double most) {
    this(most, BINS);
  }

  /**
   * Sets up an empty one of coarser bins.
   *
   * @param most values are 0 to this; larger ones count as this
   * @param bins how many
   */
  Histogram(double most, int bins) {
    this.counts = new int[bins];
    this.binsPerUnit = (float) (bins / most);
  }

  void add(float value) {
    counts[Math.max(0, Math.min(counts.length - 1, (int) (value * binsPerUnit)))]++;
    n++;
  }

  boolean isEmpty() {
    return n == 0;
  }

  /** Returns how many values lie in the bin of a value or beyond it. */
  int from(double value) {
    int many = 0;
    for (int bin = Math.max(0, (int) (value * binsPerUnit)); bin < counts.length; bin++) {
      many += counts[bin];
    }
    return many;
  }

  /** Returns the middle of the bin in which the middle value lies. */
  double median() {
    int under = 0;
    int bin = 0;
    while (bin < counts.length - 1 && under + counts[bin] <= n / 2) {
      under += counts[bin];
      bin++;
    }
    return (bin + 0.5) / binsPerUnit;
  }
}
