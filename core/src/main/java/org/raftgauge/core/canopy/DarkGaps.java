// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

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

  private final int width;
  private final int height;
  private final float[] luminance;

  DarkGaps(int width, int height, float[] luminance) {
    this.width = width;
    this.height = height;
    this.luminance = luminance;
  }

  /** Sets dark enclosed gaps of {@code leaf}; holes are {@code holePx} wide. */
  void fill(boolean[] leaf, double holePx) {
    double holeArea = Math.PI / 4 * holePx * holePx;
    boolean[] open = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      open[i] = !leaf[i];
    }
    Parts gaps = Parts.of(open, width, height);
    boolean[] fill = new boolean[gaps.count()];
    boolean any = false;
    for (int g = 0; g < fill.length; g++) {
      fill[g] = !gaps.touchesRim(g) && gaps.size(g) < holeArea;
      any |= fill[g];
    }
    if (any) {
      keepDark(fill, gaps, leaf, holeArea);
      for (int i = 0; i < leaf.length; i++) {
        leaf[i] |= open[i] && fill[gaps.label(i)];
      }
    }
  }

  /** Takes back gaps that are light, or not those of a plant much larger than a hole. */
  private void keepDark(boolean[] fill, Parts gaps, boolean[] leaf, double holeArea) {
    double dark = Math.max(DARK_SHARE * usualLeaf(leaf, luminance), BLACK);
    Parts canopy = Parts.of(leaf, width, height);
    double[] light = new double[fill.length];
    int[] touching = new int[fill.length];
    for (int i = 0; i < leaf.length; i++) {
      int gap = gaps.label(i);
      if (gap >= 0 && fill[gap]) {
        light[gap] += luminance[i];
        if (i + 1 < leaf.length && leaf[i + 1]) {
          touching[gap] = Math.max(touching[gap], canopy.size(canopy.label(i + 1)));
        }
      }
    }
    for (int g = 0; g < fill.length; g++) {
      fill[g] &= light[g] / gaps.size(g) < dark && touching[g] > TIMES_HOLE * holeArea;
    }
  }

  /** Returns the median light of leaf, 0 where there is none. */
  static double usualLeaf(boolean[] leaf, float[] luminance) {
    Histogram light = new Histogram(1);
    for (int i = 0; i < leaf.length; i++) {
      if (leaf[i]) {
        light.add(luminance[i]);
      }
    }
    return light.isEmpty() ? 0 : light.median();
  }
}
