// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.Srgb;

/**
 * Gives back to leaf its bright reflections, which wet or waxy leaves throw of lamps and sky.
 *
 * <p>A reflection adds white to the leaf's colour: it is brighter than the photo's usual leaf, and
 * its colour falls short of the threshold but not to the board's. Films of algae have such colours
 * too, yet lie anywhere on the board; so reflections are only believed on boards that show the like
 * nowhere far from plants. Rims, where leaf and bright board mix, have it as well: what is given
 * back must be wider than a rim.
 */
final class LeafGloss {
  /** Least score, as a share of the threshold: lit board beside leaf stays under 0.35 of it. */
  private static final float LEAST_SCORE = 0.5f;

  /** A reflection is at least this many times as bright as the usual leaf (working value). */
  private static final double BRIGHTER = 1.4;

  /**
   * Growth of what is no rim, px: at a straight edge 42 of 49 are leaf from the third pixel on, and
   * the outermost is rim.
   */
  private static final int TO_RIM_PX = 1;

  /** Half side of the square without leaf about what is far from plants, px. */
  private static final int FAR_PX = 25;

  /** Past this share of such colours far from plants, they are the board's (working value). */
  private static final double MOST_FAR = 0.002;

  /** Evened light of leaf lies under this, 1 is white. */
  private static final double MOST_LIGHT = 2;

  private final int[] size;
  private final float[][] even;
  private final float[] scores;

  /**
   * Sets up the search.
   *
   * @param size width and height, px
   * @param even three planes of evened light
   * @param scores of the same pixels
   */
  LeafGloss(int[] size, float[][] even, float[] scores) {
    this.size = size;
    this.even = even;
    this.scores = scores;
  }

  /**
   * Sets the reflections in the canopy.
   *
   * @param leaf the canopy
   * @param counts where green leaf may be added
   * @param threshold score past which it is leaf
   */
  void add(boolean[] leaf, boolean[] counts, double threshold) {
    float least = (float) (LEAST_SCORE * threshold);
    double bright = BRIGHTER * usual(leaf);
    boolean[] gloss = new boolean[leaf.length];
    boolean any = false;
    for (int i = 0; i < leaf.length; i++) {
      gloss[i] = !leaf[i] && counts[i] && scores[i] > least && luminance(i) > bright;
      any |= gloss[i];
    }
    if (!any || liesAnywhere(leaf, gloss)) {
      return;
    }
    boolean[] near = BoxFilter.any(NoRim.of(leaf, gloss, size), size[0], size[1], TO_RIM_PX);
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= gloss[i] && near[i];
    }
  }

  private double luminance(int i) {
    return Srgb.luminance(even[0][i], even[1][i], even[2][i]);
  }

  /** Median brightness of leaf; without any, brighter than everything. */
  private double usual(boolean[] leaf) {
    Histogram light = new Histogram(MOST_LIGHT);
    for (int i = 0; i < leaf.length; i++) {
      if (leaf[i]) {
        light.add((float) luminance(i));
      }
    }
    return light.isEmpty() ? Double.MAX_VALUE : light.median();
  }

  private boolean liesAnywhere(boolean[] leaf, boolean[] gloss) {
    boolean[] nearLeaf = BoxFilter.any(leaf, size[0], size[1], FAR_PX);
    int far = 0;
    int such = 0;
    for (int i = 0; i < leaf.length; i++) {
      if (!nearLeaf[i]) {
        far++;
        such += gloss[i] ? 1 : 0;
      }
    }
    return such > MOST_FAR * far;
  }
}
