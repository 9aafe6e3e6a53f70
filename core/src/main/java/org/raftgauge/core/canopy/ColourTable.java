// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Any colour rule, compiled: a table over evened linear light, 64 steps a channel on a square-root
 * scale, so that the photo loop only ever looks up.
 */
final class ColourTable {
  private static final int BITS = 6;
  private static final int STEPS = 1 << BITS;
  private static final int CODES = 4096;

  /** Light past this share of white is all one step: over-exposed board. */
  private static final double TOP = 1.25;

  /** Scores of leaf lie well under this: ln of 80 for each of two channels is 8.8. */
  static final double MOST_SCORE = 10;

  private static final byte[] STEP_OF_CODE = new byte[CODES];

  static {
    for (int i = 0; i < CODES; i++) {
      double light = i / (double) (CODES - 1);
      STEP_OF_CODE[i] =
          (byte) Math.min(STEPS - 1, (int) Math.round(Math.sqrt(light) * (STEPS - 1)));
    }
  }

  private final float[] scores;

  private ColourTable(float[] scores) {
    this.scores = scores;
  }

  /** Compiles a rule. */
  static ColourTable of(LeafRule rule) {
    float[] scores = new float[STEPS * STEPS * STEPS];
    double[] light = new double[STEPS];
    for (int i = 0; i < STEPS; i++) {
      double root = i / (double) (STEPS - 1);
      light[i] = root * root * TOP;
    }
    int at = 0;
    for (int r = 0; r < STEPS; r++) {
      for (int g = 0; g < STEPS; g++) {
        for (int b = 0; b < STEPS; b++) {
          scores[at++] = (float) rule.score(light[r], light[g], light[b]);
        }
      }
    }
    return new ColourTable(scores);
  }

  /**
   * Looks a colour up: evened linear light, 1 is white. What outshines the table keeps its balance:
   * leaf can be many times as bright as a dark board.
   */
  float score(float red, float green, float blue) {
    float most = Math.max(red, Math.max(green, blue));
    if (most > TOP) {
      float down = (float) TOP / most;
      return scoreWithin(red * down, green * down, blue * down);
    }
    return scoreWithin(red, green, blue);
  }

  private float scoreWithin(float red, float green, float blue) {
    return scores[(step(red) << (2 * BITS)) | (step(green) << BITS) | step(blue)];
  }

  private static int step(float light) {
    int code = (int) (light * ((CODES - 1) / (float) TOP));
    return STEP_OF_CODE[code < 0 ? 0 : Math.min(code, CODES - 1)];
  }
}
