// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * A network with one hidden layer of rectified units. Each term, less its middle and divided by its
 * spread, is kept within {@link #most}; unit j gives {@code h_j = max(0, w_j . z + c_j)}, and the
 * answer is {@code v . h + d}. Read only.
 */
final class Network {
  private final float[] middle;
  private final float[] perSpread;

  /** Weights of each term in all units, that many units are summed at once. */
  private final float[][] weights;

  private final float[] constants;
  private final float[] output;
  private final float most;

  /**
   * Sets up a network.
   *
   * @param range the terms' middles, and their spreads above 0
   * @param units for each unit its weights of the terms and last its constant
   * @param output weights of the units and last a constant
   * @param most terms further than so many spreads from their middle count as so far
   */
  Network(double[][] range, double[][] units, double[] output, double most) {
    this.middle = floats(range[0]);
    this.perSpread = floats(range[1]);
    for (int k = 0; k < perSpread.length; k++) {
      perSpread[k] = 1 / perSpread[k];
    }
    this.weights = new float[middle.length][units.length];
    this.constants = new float[units.length];
    for (int j = 0; j < units.length; j++) {
      for (int k = 0; k < middle.length; k++) {
        weights[k][j] = (float) units[j][k];
      }
      constants[j] = (float) units[j][middle.length];
    }
    this.output = floats(output);
    this.most = (float) most;
  }

  private static float[] floats(double[] values) {
    float[] floats = new float[values.length];
    for (int i = 0; i < floats.length; i++) {
      floats[i] = (float) values[i];
    }
    return floats;
  }

  /** Returns the answer to one case's terms. */
  float of(float[] terms) {
    float[] sums = constants.clone();
    for (int k = 0; k < middle.length; k++) {
      float z = Math.max(-most, Math.min(most, (terms[k] - middle[k]) * perSpread[k]));
      float[] weight = weights[k];
      for (int j = 0; j < sums.length; j++) {
        sums[j] += weight[j] * z;
      }
    }
    float answer = output[sums.length];
    for (int j = 0; j < sums.length; j++) {
      answer += Math.max(0, sums[j]) * output[j];
    }
    return answer;
  }
}
