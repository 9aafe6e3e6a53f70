// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.Arrays;

/** Cases that a network is taught from. Owns its arrays. */
final class Cases {
  /** Terms that hardly vary are not blown up. */
  private static final double LEAST_SPREAD = 1e-3;

  private final float[][] x;
  private final boolean[] leaf;
  private final float[] weight;
  private final float[] known;

  /**
   * Holds cases.
   *
   * @param x terms of each case
   * @param leaf whether each is leaf
   * @param weight of each, 1 in the mean
   * @param known log odds that are known of each beforehand; what is taught is added to them
   */
  Cases(float[][] x, boolean[] leaf, float[] weight, float[] known) {
    this.x = x;
    this.leaf = leaf;
    this.weight = weight;
    this.known = known;
  }

  /**
   * Scales weights to 1 in the mean.
   *
   * @param x terms of each case
   * @param leaf whether each is leaf
   * @param weights of each, above 0
   * @return cases of which nothing is known beforehand
   */
  static Cases of(float[][] x, boolean[] leaf, double[] weights) {
    double mean = Arrays.stream(weights).average().orElseThrow();
    float[] scaled = new float[weights.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = (float) (weights[i] / mean);
    }
    return new Cases(x, leaf, scaled, new float[x.length]);
  }

  /**
   * Brings the terms to mean 0 and spread 1, cut at a limit, in place.
   *
   * @return their means and their spreads, to four decimals
   */
  double[][] normalise(double most) {
    int terms = x[0].length;
    double[][] range = new double[2][terms];
    for (int k = 0; k < terms; k++) {
      double sum = 0;
      double squares = 0;
      for (float[] row : x) {
        sum += row[k];
        squares += (double) row[k] * row[k];
      }
      double mean = sum / x.length;
      double spread = Math.sqrt(Math.max(0, squares / x.length - mean * mean));
      range[0][k] = Math.rint(mean * 1e4) / 1e4;
      range[1][k] = Math.max(LEAST_SPREAD, Math.rint(spread * 1e4) / 1e4);
      for (float[] row : x) {
        double z = (row[k] - range[0][k]) / range[1][k];
        row[k] = (float) Math.max(-most, Math.min(most, z));
      }
    }
    return range;
  }

  float[][] x() {
    return x;
  }

  boolean[] leaf() {
    return leaf;
  }

  float[] weight() {
    return weight;
  }

  float[] known() {
    return known;
  }
}
