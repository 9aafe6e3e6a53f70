// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * The ground's greenness, and how much more of it makes a leaf.
 *
 * <p>The ground is the commonest greenness near none, so that a closed canopy is not taken for it;
 * the threshold is a share of the way from there to the leaves' own level, in which each pixel
 * counts by its contrast, so that stray ground does not pull the level down.
 *
 * @param ground greenness of the ground, -a*
 * @param threshold greenness over the ground past which a pixel may be leaf, at least 3
 */
record GroundLevel(double ground, double threshold) {
  private static final int CELLS = 120;
  private static final double LEAST = -30;
  private static final double CELL = 0.5;
  private static final int SMOOTH_CELLS = 2;

  /** Spread of grounds' greenness: soils of 140 photos lie from -5 to 4. */
  private static final double USUAL_SPREAD = 4;

  /** A level greener than this is a closed canopy's darkest leaf: no ground is seen. */
  private static final double MOST_GROUND = 2 * USUAL_SPREAD;

  /** Scatter of the ground where nothing lies below its level. */
  private static final double USUAL_SCATTER = 2;

  /** Fewer pixels below the ground's level tell no scatter. */
  private static final int LEAST_BELOW = 50;

  /** Greenness that is just visible. */
  private static final double VISIBLE = 3;

  /** The threshold lies above this many standard deviations of the ground. */
  private static final double ABOVE_SCATTER = 1.6;

  /** Share of the contrast-weighted leaf level, which lies above the plain mean. */
  private static final double SHARE_OF_LEAF = 0.38;

  /** Less than this share of a picture tells no leaf level. */
  private static final double LEAST_SHARE = 2e-4;

  private static final int ROUNDS = 8;
  private static final double SETTLED = 0.05;

  /** Reads the level from samples of greenness. */
  static GroundLevel of(float[] green) {
    double ground = ground(green);
    double scatter = scatter(green, ground);
    double base = Math.max(VISIBLE, ABOVE_SCATTER * scatter);
    return new GroundLevel(ground, threshold(green, ground, base));
  }

  /** Returns how far a greenness lies between ground (0) and threshold (1); leaf lies past 1. */
  double contrast(double green) {
    return (green - ground) / threshold;
  }

  /** The commonest greenness near none; none itself where no ground is seen. */
  private static double ground(float[] green) {
    int[] histogram = new int[CELLS];
    for (float g : green) {
      int at = (int) Math.floor((g - LEAST) / CELL);
      if (at >= 0 && at < CELLS) {
        histogram[at]++;
      }
    }
    double best = -1;
    double mode = 0;
    for (int i = 0; i < CELLS; i++) {
      double sum = 0;
      for (int k = Math.max(0, i - SMOOTH_CELLS); k <= Math.min(CELLS - 1, i + SMOOTH_CELLS); k++) {
        sum += histogram[k];
      }
      double centre = LEAST + (i + 0.5) * CELL;
      double likely = sum * Math.exp(-0.5 * centre * centre / (USUAL_SPREAD * USUAL_SPREAD));
      if (likely > best) {
        best = likely;
        mode = centre;
      }
    }
    return mode > MOST_GROUND ? 0 : mode;
  }

  /** Standard deviation from the side where no leaf lies: 1.4826 times the median deviation. */
  private static double scatter(float[] green, double ground) {
    float[] below = new float[green.length];
    int n = 0;
    for (float g : green) {
      if (g < ground) {
        below[n++] = (float) (ground - g);
      }
    }
    if (n <= LEAST_BELOW) {
      return USUAL_SCATTER;
    }
    Arrays.sort(below, 0, n);
    return 1.4826 * below[n / 2];
  }

  private static double threshold(float[] green, double ground, double base) {
    double threshold = base;
    for (int round = 0; round < ROUNDS; round++) {
      double weights = 0;
      double levels = 0;
      int above = 0;
      for (float g : green) {
        double d = g - ground;
        if (d > threshold) {
          weights += d - threshold;
          levels += (d - threshold) * d;
          above++;
        }
      }
      if (above < LEAST_SHARE * green.length || above == 0) {
        return threshold;
      }
      double next = Math.max(base, SHARE_OF_LEAF * levels / weights);
      if (Math.abs(next - threshold) < SETTLED) {
        return threshold;
      }
      threshold = next;
    }
    return threshold;
  }
}
