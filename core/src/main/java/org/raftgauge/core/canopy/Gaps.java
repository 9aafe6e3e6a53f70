// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** The gaps that canopy encloses, smaller than a planting hole, and the canopy that they lie in. */
final class Gaps {
  private final Parts gaps;
  private final boolean[] small;
  private final int[] canopyPx;
  private final boolean none;

  private Gaps(Parts gaps, boolean[] small, int[] canopyPx, boolean none) {
    this.gaps = gaps;
    this.small = small;
    this.canopyPx = canopyPx;
    this.none = none;
  }

  /**
   * Looks for gaps.
   *
   * @param leaf the canopy
   * @param width px
   * @param height px
   * @param holeArea area of a hole, px
   */
  static Gaps of(boolean[] leaf, int width, int height, double holeArea) {
    boolean[] open = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      open[i] = !leaf[i];
    }
    Parts gaps = Parts.of(open, width, height);
    boolean[] small = new boolean[gaps.count()];
    boolean any = false;
    for (int g = 0; g < small.length; g++) {
      small[g] = !gaps.touchesRim(g) && gaps.size(g) < holeArea;
      any |= small[g];
    }
    int[] canopyPx = new int[small.length];
    if (any) {
      Parts canopy = Parts.of(leaf, width, height);
      for (int i = 0; i + 1 < leaf.length; i++) {
        int gap = gaps.label(i);
        if (gap >= 0 && small[gap] && leaf[i + 1]) {
          canopyPx[gap] = Math.max(canopyPx[gap], canopy.size(canopy.label(i + 1)));
        }
      }
    }
    return new Gaps(gaps, small, canopyPx, !any);
  }

  /** Says whether there are none that are small and enclosed. */
  boolean isEmpty() {
    return none;
  }

  int count() {
    return small.length;
  }

  /** Returns the gap that a pixel lies in, -1 where it lies in none that is small and enclosed. */
  int at(int i) {
    int gap = gaps.label(i);
    return gap >= 0 && small[gap] ? gap : -1;
  }

  /** Returns the area of the largest part of the canopy that a gap touches, px. */
  int canopyPx(int gap) {
    return canopyPx[gap];
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
