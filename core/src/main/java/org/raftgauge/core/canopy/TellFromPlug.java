// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * Decides anew inside the holes once the colour of the plugs is known: that is none of the leaf.
 */
final class TellFromPlug {
  /** Water and shade in a hole score under this, whatever the plugs look like. */
  private static final double TINGED = 0.4;

  private final CanopyRule rule;
  private final float[] scores;
  private final boolean[] hole;

  /**
   * How far a pixel lies from the plug's colour; 1 is as near to it as to the leaf's. Empty until
   * that is known.
   */
  private float[] away = {};

  /**
   * Sets up.
   *
   * @param rule of the leaf
   * @param scores of each pixel; changed in place
   * @param hole says which pixels are of holes
   */
  TellFromPlug(CanopyRule rule, float[] scores, boolean[] hole) {
    this.rule = rule;
    this.scores = scores;
    this.hole = hole;
  }

  /** Takes the plug's own colour from the holes. */
  void clear(PlugColour plug, float[][] even) {
    away = new float[scores.length];
    double[] leaf = new double[scores.length];
    int n = 0;
    for (int i = 0; i < scores.length; i++) {
      if (!hole[i]) {
        continue;
      }
      if (plug.shows(even[0][i], even[1][i], even[2][i])) {
        scores[i] = 0;
        continue;
      }
      away[i] = (float) plug.distance(even[0][i], even[1][i], even[2][i]);
      if (scores[i] > rule.leastScore()) {
        leaf[n++] = away[i];
      }
    }
    double middle = n == 0 ? Double.MAX_VALUE : 0.5 * Quantile.of(Arrays.copyOf(leaf, n), 0.5);
    for (int i = 0; i < away.length; i++) {
      away[i] = (float) (away[i] / middle);
    }
  }

  /** Raises what is nearer to the leaf's distance from the plug's colour than to none. */
  void raise() {
    for (int i = 0; i < away.length; i++) {
      if (away[i] > 1 && scores[i] > TINGED) {
        scores[i] = Math.max(scores[i], (float) (rule.mostThreshold() * Math.min(2.0, away[i])));
      }
    }
  }

  /** Says whether a pixel lies in a hole whose plug's colour is known, and has another. */
  boolean besidePlug(int i) {
    return away.length > 0 && away[i] > 0;
  }
}
