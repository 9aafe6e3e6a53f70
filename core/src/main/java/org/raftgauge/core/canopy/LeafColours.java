// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * The colours of a photo's own leaves: for each cell of CIELAB the probability of leaf, learned
 * once from the pixels' first decision by contrast (a histogram Bayes rule with softened priors).
 * More than one round of learning drifts.
 */
final class LeafColours {
  /** Cells along L, a and b; each side is 6, 3 and 3 units. */
  private static final int CELLS_L = 32;

  private static final int CELLS_AB = 64;
  private static final double SIDE_L = 6;
  private static final double SIDE_AB = 3;
  private static final double LEAST_AB = -96;
  private static final int CELLS = CELLS_L * CELLS_AB * CELLS_AB;

  /** Smoothing along each axis. */
  private static final double[] KERNEL = {.08, .24, .36, .24, .08};

  /** Width of a mixed rim in contrast. */
  private static final double SOFT = 0.2;

  /** Weight of both classes: 1 would ignore the cover, 0 drown rare leaves. */
  private static final double BALANCE = 0.8;

  /** Cover under which leaves get no more weight. */
  private static final double LEAST_COVER = 1e-3;

  private LeafColours() {}

  /** Returns the cell of a colour. */
  static int cell(Cielab lab) {
    int l = clamp(lab.l() / SIDE_L, CELLS_L);
    int a = clamp((lab.a() - LEAST_AB) / SIDE_AB, CELLS_AB);
    int b = clamp((lab.b() - LEAST_AB) / SIDE_AB, CELLS_AB);
    return (l * CELLS_AB + a) * CELLS_AB + b;
  }

  private static int clamp(double at, int n) {
    return (int) Math.max(0, Math.min(n - 1, at));
  }

  /**
   * Learns the probability of leaf in each cell from samples: their greenness and their cells, of
   * the same length.
   */
  static float[] learn(float[] green, int[] cells, GroundLevel level) {
    double[] leaf = new double[CELLS];
    double[] ground = new double[CELLS];
    double sum = 0;
    for (int i = 0; i < green.length; i++) {
      double p = first(level.contrast(green[i]));
      leaf[cells[i]] += p;
      ground[cells[i]] += 1 - p;
      sum += p;
    }
    double cover = Math.max(LEAST_COVER, sum / Math.max(1, green.length));
    double weight = Math.pow((1 - cover) / cover, BALANCE);
    double[] l = smooth(leaf);
    double[] g = smooth(ground);
    float[] table = new float[CELLS];
    for (int i = 0; i < CELLS; i++) {
      table[i] =
          (float)
              (l[i] + g[i] > 1e-6
                  ? weight * l[i] / (weight * l[i] + g[i] + 1e-12)
                  : first(level.contrast(greenOfCell(i))));
    }
    return table;
  }

  private static double first(double contrast) {
    return Sigmoid.of((contrast - 1) / SOFT);
  }

  private static double greenOfCell(int cell) {
    int a = cell / CELLS_AB % CELLS_AB;
    return -((a + 0.5) * SIDE_AB + LEAST_AB);
  }

  private static double[] smooth(double[] cells) {
    double[] smooth = cells;
    for (int stride : new int[] {CELLS_AB * CELLS_AB, CELLS_AB, 1}) {
      smooth = along(smooth, stride, stride == CELLS_AB * CELLS_AB ? CELLS_L : CELLS_AB);
    }
    return smooth;
  }

  private static double[] along(double[] cells, int stride, int n) {
    double[] out = new double[cells.length];
    for (int i = 0; i < cells.length; i++) {
      if (cells[i] == 0) {
        continue;
      }
      int at = i / stride % n;
      for (int k = -2; k <= 2; k++) {
        if (at + k >= 0 && at + k < n) {
          out[i + k * stride] += KERNEL[k + 2] * cells[i];
        }
      }
    }
    return out;
  }
}
