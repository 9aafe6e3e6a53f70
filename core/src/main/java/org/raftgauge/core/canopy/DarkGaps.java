// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * Fills dark gaps inside a plant. Between the leaves of a grown plant it is too dark to see a
 * colour, and what lies there is leaf again; the gap of a young plant may show the hole it stands
 * in and stays open.
 */
final class DarkGaps {
  /** A gap darker than this share of the usual leaf shows no colour of its own. */
  private static final double DARK_SHARE = 0.4;

  /** Linear light under which nothing shows a colour, however dark the leaf is. */
  private static final double BLACK = 0.05;

  /** Canopy must be this many times a hole's area before its gaps cannot be the hole. */
  private static final double TIMES_HOLE = 4;

  private final int[] size;
  private final float[] luminance;

  DarkGaps(int[] size, float[] luminance) {
    this.size = size;
    this.luminance = luminance;
  }

  /** Sets dark enclosed gaps of {@code leaf}; holes are {@code holePx} wide. */
  void fill(boolean[] leaf, double holePx) {
    double holeArea = Math.PI / 4 * holePx * holePx;
    Gaps gaps = Gaps.of(leaf, size, holeArea, TIMES_HOLE);
    if (gaps.isEmpty()) {
      return;
    }
    double[] light = new double[gaps.count()];
    int[] area = new int[gaps.count()];
    gaps.eachRun(
        (gap, from, to) -> {
          area[gap] += to - from;
          for (int i = from; i < to; i++) {
            light[gap] += luminance[i];
          }
        });
    double dark = Math.max(DARK_SHARE * Gaps.usualLeaf(leaf, luminance), BLACK);
    gaps.eachRun(
        (gap, from, to) -> {
          if (light[gap] / area[gap] < dark) {
            Arrays.fill(leaf, from, to, true);
          }
        });
  }
}
