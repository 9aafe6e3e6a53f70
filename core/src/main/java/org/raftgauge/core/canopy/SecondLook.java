// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import java.util.List;

/**
 * Looks at open ground once more, now that a first decision says where plants stand: weighs the
 * {@link GroundEvidence} of each pixel by a logistic regression. Pale leaf and stems beside leaf
 * are found by it, stained stones far from any are not.
 */
final class SecondLook {
  /**
   * Fitted on every second photo of two field crops with hand-drawn masks, each photo weighted by
   * one over its leaf area, as Dice weighs it. The other half gives nearly the same weights and
   * finds the same; the accuracy page gives the figures of the half that was not fitted to.
   */
  static final List<Double> BUILT_IN =
      List.of(-2.99, 0.67, 0.98, -0.58, 1.28, -1.11, 0.28, 0.19, 2.64, -1.73, 0.79, 0.19, 2.59);

  /** Under this share nothing of a pixel counts as leaf. */
  private static final float LEAST_SHARE = 0.25f;

  private SecondLook() {}

  /**
   * Decides again by the built-in weights.
   *
   * @param evidence of each pixel
   * @param seen says which pixels the photo shows
   * @return how surely each pixel is leaf, 0..1; 0 where nothing is seen
   */
  static float[] share(GroundEvidence evidence, boolean[] seen) {
    float[] share = new float[seen.length];
    double[] terms = new double[GroundEvidence.TERMS];
    for (int i = 0; i < share.length; i++) {
      evidence.at(i, terms);
      double score = 0;
      for (int k = 0; k < terms.length; k++) {
        score += BUILT_IN.get(k) * terms[k];
      }
      share[i] = seen[i] ? (float) Sigmoid.of(score) : 0;
    }
    return share;
  }

  /**
   * Takes away parts that the first decision found nothing of.
   *
   * @param share how surely each pixel is leaf; changed in place
   * @param evidence of each pixel
   * @param greenness of the picture
   */
  static void dropNew(float[] share, GroundEvidence evidence, Greenness greenness) {
    boolean[] some = new boolean[share.length];
    for (int i = 0; i < share.length; i++) {
      some[i] = share[i] > LEAST_SHARE;
    }
    Parts parts = Parts.alsoDiagonal(some, greenness.width, greenness.height);
    BitSet known = new BitSet();
    for (int i = 0; i < share.length; i++) {
      if (some[i] && evidence.wasLeaf(i)) {
        known.set(parts.label(i));
      }
    }
    for (int i = 0; i < share.length; i++) {
      if (!some[i] || !known.get(parts.label(i))) {
        share[i] = 0;
      }
    }
  }
}
