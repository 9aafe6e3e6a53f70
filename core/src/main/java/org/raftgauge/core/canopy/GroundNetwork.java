// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;
import org.raftgauge.core.book.TaughtGround;

/** Scores pixels of open ground as a taught model says, see {@link TaughtGround}. Read only. */
public final class GroundNetwork {
  private final float[] middle;
  private final float[] perSpread;
  private final float[][] units;
  private final float[] output;

  /**
   * Sets up a network.
   *
   * @param ground as the model's file says it
   */
  public GroundNetwork(TaughtGround ground) {
    this.middle = floats(ground.middle());
    this.perSpread = floats(ground.spread());
    for (int k = 0; k < perSpread.length; k++) {
      perSpread[k] = 1 / perSpread[k];
    }
    this.units = ground.units().stream().map(GroundNetwork::floats).toArray(float[][]::new);
    this.output = floats(ground.output());
  }

  private static float[] floats(List<Double> values) {
    float[] floats = new float[values.size()];
    for (int i = 0; i < floats.length; i++) {
      floats[i] = values.get(i).floatValue();
    }
    return floats;
  }

  /**
   * Scores a pixel.
   *
   * @param terms its {@link TaughtGround#TERMS} terms
   * @return log odds of leaf
   */
  public double score(float[] terms) {
    float[] z = new float[middle.length];
    float most = (float) TaughtGround.MOST;
    for (int k = 0; k < z.length; k++) {
      z[k] = Math.max(-most, Math.min(most, (terms[k] - middle[k]) * perSpread[k]));
    }
    float score = output[units.length];
    for (int j = 0; j < units.length; j++) {
      float[] weights = units[j];
      float sum = weights[z.length];
      for (int k = 0; k < z.length; k++) {
        sum += weights[k] * z[k];
      }
      score += Math.max(0, sum) * output[j];
    }
    return score;
  }
}
