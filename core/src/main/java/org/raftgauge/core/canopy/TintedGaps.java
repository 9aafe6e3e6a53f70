// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Fills gaps over its hole inside a grown plant that are tinted like a leaf and as bright. Where
 * red leaf turns green it is as brown as many a plug; but a plug that shows between leaves lies in
 * their shade. Beside the hole such a gap may be board that is lit through leaves.
 */
final class TintedGaps {
  /** What scores less is told from leaf by its colour. */
  private static final double TINTED = 0.35;

  /** A gap with less of the usual leaf's light may be a plug in the shade (working value). */
  private static final double AS_BRIGHT = 0.6;

  /** Canopy must be this many times a hole's area before its gaps are unlikely to be the hole. */
  private static final double TIMES_HOLE = 2;

  private final int width;
  private final int height;
  private final float[] luminance;
  private final float[] scores;
  private final boolean[] hole;

  /**
   * Sets up.
   *
   * @param size width and height, px
   * @param luminance of each pixel
   * @param scores of each pixel, before any was told from the plugs
   * @param hole says which pixels are of holes
   */
  TintedGaps(int[] size, float[] luminance, float[] scores, boolean[] hole) {
    this.width = size[0];
    this.height = size[1];
    this.luminance = luminance;
    this.scores = scores;
    this.hole = hole;
  }

  /** Sets such gaps of {@code leaf}; holes are {@code holePx} wide. */
  void fill(boolean[] leaf, double holePx) {
    double holeArea = Math.PI / 4 * holePx * holePx;
    Gaps gaps = Gaps.of(leaf, width, height, holeArea);
    if (gaps.isEmpty()) {
      return;
    }
    double[] light = new double[gaps.count()];
    double[] score = new double[gaps.count()];
    int[] over = new int[gaps.count()];
    for (int i = 0; i < leaf.length; i++) {
      int gap = gaps.at(i);
      if (gap >= 0 && hole[i]) {
        over[gap]++;
        light[gap] += luminance[i];
        score[gap] += scores[i];
      }
    }
    double least = AS_BRIGHT * Gaps.usualLeaf(leaf, luminance);
    for (int i = 0; i < leaf.length; i++) {
      int g = gaps.at(i);
      leaf[i] |=
          g >= 0
              && hole[i]
              && gaps.canopyPx(g) > TIMES_HOLE * holeArea
              && light[g] > least * over[g]
              && score[g] > TINTED * over[g];
    }
  }
}
