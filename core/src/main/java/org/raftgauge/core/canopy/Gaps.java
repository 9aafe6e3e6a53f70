// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** The gaps smaller than a planting hole that canopy of some size encloses. */
final class Gaps {
  private final Parts gaps;
  private final boolean[] wanted;

  private Gaps(Parts gaps, boolean[] wanted) {
    this.gaps = gaps;
    this.wanted = wanted;
  }

  /**
   * Looks for gaps.
   *
   * @param leaf the canopy
   * @param size width and height, px
   * @param holeArea area of a hole, px
   * @param timesHole a gap touches a part of the canopy larger than this many times that area
   */
  static Gaps of(boolean[] leaf, int[] size, double holeArea, double timesHole) {
    Parts gaps = Parts.outside(leaf, size[0], size[1]);
    boolean[] small = new boolean[gaps.count()];
    boolean any = false;
    for (int g = 0; g < small.length; g++) {
      small[g] = !gaps.touchesRim(g) && gaps.size(g) < holeArea;
      any |= small[g];
    }
    boolean[] wanted = new boolean[small.length];
    if (any) {
      Parts canopy = Parts.of(leaf, size[0], size[1]);
      gaps.eachRun(
          (g, from, to) ->
              wanted[g] |= small[g] && canopy.size(canopy.label(to)) > timesHole * holeArea);
    }
    return new Gaps(gaps, wanted);
  }

  /** Says whether there are none. */
  boolean isEmpty() {
    for (boolean is : wanted) {
      if (is) {
        return false;
      }
    }
    return true;
  }

  /** Returns one more than the largest number of a gap. */
  int count() {
    return wanted.length;
  }

  /** Shows the gaps row by row, each by its number. */
  void eachRun(Parts.EachRun each) {
    gaps.eachRun(
        (g, from, to) -> {
          if (wanted[g]) {
            each.see(g, from, to);
          }
        });
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
