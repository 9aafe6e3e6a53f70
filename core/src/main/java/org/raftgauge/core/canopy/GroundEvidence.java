// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.opencv.DistanceTo;

/**
 * What speaks for leaf at a pixel of open ground, once a first decision says where plants stand:
 * its contrast and colour, how far it is from leaf, how much lighter or darker than the ground it
 * is, how much leaf is about, and how busy its surroundings are.
 *
 * <p>Owns its arrays; read only.
 */
final class GroundEvidence {
  /** Number of terms: a constant and what {@link #at} lists. */
  static final int TERMS = 13;

  private static final float FAR_PX = 30;
  private static final int AROUND_PX = 30;
  private static final int NEAR_PX = 5;
  private static final int STEPS_PX = 4;

  /** Brings px and L* near 1. */
  private static final float TENTH = 0.1f;

  /** Where no ground is about, a pixel is compared with itself. */
  private static final float LEAST_GROUND = 1e-3f;

  private final float[] contrast;
  private final float[] colour;
  private final float[] distance;
  private final float[] lighter;
  private final float[] cover;
  private final float[] near;
  private final float[] steps;

  /** A first decision; not a record, as it holds arrays. */
  static final class First {
    private final float[] colour;
    private final float[] share;

    /**
     * Wraps a decision without copying it.
     *
     * @param colour how surely each pixel is leaf by its colour, 0..1
     * @param share how surely it is leaf by colour, contrast and shape, 0..1
     */
    First(float[] colour, float[] share) {
      this.colour = colour;
      this.share = share;
    }
  }

  /**
   * Gathers the evidence of a picture.
   *
   * @param greenness of the picture
   * @param contrast of each pixel, -1..4
   * @param threshold a* of a contrast of 1
   * @param first the first decision
   */
  GroundEvidence(Greenness greenness, float[] contrast, double threshold, First first) {
    int width = greenness.width;
    int height = greenness.height;
    this.contrast = contrast;
    this.colour = first.colour;
    this.lighter = lighter(greenness, colour);
    this.distance = DistanceTo.nearest(leaf(first.share), width, height);
    this.cover = BoxMean.of(first.share, width, height, AROUND_PX);
    this.near = BoxMean.of(contrast, width, height, NEAR_PX);
    float[] slope = new Slope(width, height, contrast).all();
    for (int i = 0; i < slope.length; i++) {
      slope[i] *= (float) threshold;
    }
    this.steps = BoxMean.of(slope, width, height, STEPS_PX);
  }

  /**
   * Writes a pixel's terms: 1; contrast; contrast past 0.5, 1 and 1.5; tens of px from leaf, up to
   * 3; tens of L* over the ground; their size; share of leaf about; mean contrast near past 0.5 and
   * 1; mean step of a* a px; colour.
   */
  void at(int i, double[] terms) {
    terms[0] = 1;
    terms[1] = contrast[i];
    terms[2] = Math.max(0, contrast[i] - 0.5);
    terms[3] = Math.max(0, contrast[i] - 1);
    terms[4] = Math.max(0, contrast[i] - 1.5);
    terms[5] = TENTH * Math.min(FAR_PX, distance[i]);
    terms[6] = TENTH * lighter[i];
    terms[7] = TENTH * Math.abs(lighter[i]);
    terms[8] = cover[i];
    terms[9] = Math.max(0, near[i] - 0.5);
    terms[10] = Math.max(0, near[i] - 1);
    terms[11] = steps[i];
    terms[12] = colour[i];
  }

  /**
   * Writes the terms of a pixel that a network weighs, which finds bends by itself: contrast; tens
   * of px from leaf, up to 3; tens of L* over the ground; share of leaf about; mean step of a* a
   * px; colour.
   *
   * @return how many were written
   */
  int plainAt(int i, float[] terms) {
    terms[0] = contrast[i];
    terms[1] = TENTH * Math.min(FAR_PX, distance[i]);
    terms[2] = TENTH * lighter[i];
    terms[3] = cover[i];
    terms[4] = steps[i];
    terms[5] = colour[i];
    return 6;
  }

  /** Returns the contrast of each pixel; read only. */
  float[] contrast() {
    return contrast;
  }

  /** Returns how surely a pixel is ground by its colour, 0..1. */
  float ground(int i) {
    return 1 - colour[i];
  }

  /** Says whether the first decision took a pixel for leaf. */
  boolean wasLeaf(int i) {
    return distance[i] == 0;
  }

  private static boolean[] leaf(float[] share) {
    boolean[] leaf = new boolean[share.length];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = share[i] > 0.5f;
    }
    return leaf;
  }

  /** Lightness over that of the ground about each pixel, L*. */
  private static float[] lighter(Greenness greenness, float[] colour) {
    float[] ground = new float[colour.length];
    float[] light = new float[colour.length];
    for (int i = 0; i < colour.length; i++) {
      ground[i] = greenness.seen[i] ? 1 - colour[i] : 0;
      light[i] = ground[i] * greenness.light[i];
    }
    float[] share = BoxMean.of(ground, greenness.width, greenness.height, AROUND_PX);
    float[] lights = BoxMean.of(light, greenness.width, greenness.height, AROUND_PX);
    float[] lighter = new float[colour.length];
    for (int i = 0; i < lighter.length; i++) {
      float own = greenness.light[i];
      lighter[i] = own - (lights[i] + LEAST_GROUND * own) / (share[i] + LEAST_GROUND);
    }
    return lighter;
  }
}
