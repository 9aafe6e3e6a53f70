// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** Colours and scores of some pixels. */
final class ColourSample {
  /** Number of values of a pixel: {@code ln(G/R)}, {@code ln(G/B)}, ln of its light, its score. */
  static final int VALUES = 4;

  private final double[][] values = new double[VALUES][1 << 10];
  private int n;

  /**
   * Adds a pixel.
   *
   * @param colour its three logarithms
   * @param score its score
   */
  void add(double[] colour, double score) {
    if (n == values[0].length) {
      for (int k = 0; k < VALUES; k++) {
        values[k] = Arrays.copyOf(values[k], 2 * n);
      }
    }
    for (int k = 0; k < VALUES - 1; k++) {
      values[k][n] = colour[k];
    }
    values[VALUES - 1][n++] = score;
  }

  /** Returns how many pixels it holds. */
  int size() {
    return n;
  }

  /** Returns those that score as much as a share of them does, and more. */
  ColourSample above(double share) {
    ColourSample above = new ColourSample();
    double[] scores = Arrays.copyOf(values[VALUES - 1], n);
    double least = n == 0 ? 0 : Quantile.of(scores, share);
    for (int i = 0; i < n; i++) {
      if (scores[i] >= least) {
        above.add(new double[] {values[0][i], values[1][i], values[2][i]}, scores[i]);
      }
    }
    return above;
  }

  /** Returns the median of each value; zeros where it holds no pixel. */
  double[] medians() {
    double[] medians = new double[VALUES];
    for (int k = 0; k < VALUES && n > 0; k++) {
      medians[k] = Quantile.of(Arrays.copyOf(values[k], n), 0.5);
    }
    return medians;
  }
}
