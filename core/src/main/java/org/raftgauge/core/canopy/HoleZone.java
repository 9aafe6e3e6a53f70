// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** How often each colour is met in one zone of all holes of a board, per pixel of the zone. */
final class HoleZone {
  private static final int U = 34;
  private static final int V = 44;
  private static final int L = 18;
  private static final double CELL = 0.1;
  private static final double LIGHT_CELL = 0.3;
  private static final double LEAST_U = -1.7;
  private static final double LEAST_V = -1.3;
  private static final double LEAST_L = -4.5;

  /** Rarer colours are as good as none. */
  private static final double RARE = 2e-4;

  private final float[] counts = new float[U * V * L];
  private int seen;
  private float[] smooth = {};

  /** Returns the cell of a colour: {@code ln(G/R)}, {@code ln(G/B)} and ln of its light. */
  static int cell(double u, double v, double light) {
    int a = cell((u - LEAST_U) / CELL, U);
    int b = cell((v - LEAST_V) / CELL, V);
    return (a * V + b) * L + cell((light - LEAST_L) / LIGHT_CELL, L);
  }

  private static int cell(double at, int cells) {
    return (int) Math.max(1, Math.min(cells - 2, at));
  }

  /** Counts a pixel of the zone whose colour does not matter. */
  void see() {
    seen++;
  }

  /** Counts a pixel of the zone. */
  void add(int cell) {
    seen++;
    counts[cell]++;
  }

  /** Returns ln of how often a colour is met. */
  double ln(int cell) {
    if (smooth.length == 0) {
      smooth = along(along(along(counts, 1), L), L * V);
    }
    return Math.log(smooth[cell] / Math.max(1, seen) + RARE);
  }

  private static float[] along(float[] counts, int step) {
    float[] out = new float[counts.length];
    for (int i = step; i < counts.length - step; i++) {
      out[i] = 0.25f * (counts[i - step] + counts[i + step]) + 0.5f * counts[i];
    }
    return out;
  }
}
