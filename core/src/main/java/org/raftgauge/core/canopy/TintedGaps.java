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

  private final int[] size;
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
    this.size = size;
    this.luminance = luminance;
    this.scores = scores;
    this.hole = hole;
  }

  /** Sets such gaps of {@code leaf}; holes are {@code holePx} wide. */
  void fill(boolean[] leaf, double holePx) {
    double holeArea = Math.PI / 4 * holePx * holePx;
    Gaps gaps = Gaps.of(leaf, size, holeArea, TIMES_HOLE);
    if (gaps.isEmpty()) {
      return;
    }
    double[] light = new double[gaps.count()];
    double[] score = new double[gaps.count()];
    int[] over = new int[gaps.count()];
    gaps.eachRun(
        (gap, from, to) -> {
          for (int i = from; i < to; i++) {
            if (hole[i]) {
              over[gap]++;
              light[gap] += luminance[i];
              score[gap] += scores[i];
            }
          }
        });
    double least = AS_BRIGHT * Gaps.usualLeaf(leaf, luminance);
    gaps.eachRun(
        (gap, from, to) -> {
          boolean fills = light[gap] > least * over[gap] && score[gap] > TINTED * over[gap];
          for (int i = from; i < to; i++) {
            leaf[i] |= fills && hole[i];
          }
        });
  }
}
