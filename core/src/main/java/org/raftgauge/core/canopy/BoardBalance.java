// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;

/** Finds the colour balance of a deck's board, {@code ln(R/G)} and {@code ln(B/G)}. */
final class BoardBalance {
  /** Side of a cell of the histogram of colour balances, ln. */
  private static final double CELL = 0.05;

  private static final int CELLS = 96;

  /**
   * Spread of ln(R/G) + ln(B/G) of boards under lights that can be worked with, ln; leaf lies at
   * 1.2 and more (measured on rendered and real leaf).
   */
  static final double TINT_SPREAD = 0.40;

  private BoardBalance() {}

  /** The colour balance that is most likely the board's. */
  static double[] peak(List<double[]> samples, List<double[]> white) {
    double[] cells = new double[CELLS * CELLS];
    for (double[] s : samples) {
      int p = cell(s[2]);
      int q = cell(s[3]);
      if (p > 0 && q > 0 && p < CELLS - 1 && q < CELLS - 1) {
        spread(cells, p, q);
      }
    }
    double whiteTint = whiteTint(white);
    double[] best = {0, 0, -1};
    for (int i = 0; i < cells.length; i++) {
      double p = value(i / CELLS);
      double q = value(i % CELLS);
      double score = cells[i] * likelihood(p, q, whiteTint);
      if (score > best[2]) {
        best = new double[] {p, q, score};
      }
    }
    return best;
  }

  static double whiteTint(List<double[]> white) {
    return white.isEmpty()
        ? 0
        : DeckSamples.quantile(white, 2, 0.5) + DeckSamples.quantile(white, 3, 0.5);
  }

  private static double likelihood(double p, double q, double whiteTint) {
    double tint = p + q - whiteTint;
    return Math.exp(-0.5 * (tint / TINT_SPREAD) * (tint / TINT_SPREAD));
  }

  private static void spread(double[] cells, int p, int q) {
    for (int dp = -1; dp <= 1; dp++) {
      for (int dq = -1; dq <= 1; dq++) {
        cells[(p + dp) * CELLS + q + dq] += (2 - Math.abs(dp)) * (2 - Math.abs(dq)) / 16.0;
      }
    }
  }

  private static int cell(double value) {
    return (int) Math.floor(value / CELL) + CELLS / 2;
  }

  private static double value(int cell) {
    return (cell - CELLS / 2 + 0.5) * CELL;
  }
}
