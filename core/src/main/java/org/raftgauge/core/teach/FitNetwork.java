// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.Arrays;
import java.util.Random;

/**
 * Fits a network of one hidden layer of rectified units to cases by logistic loss, on small draws
 * of cases, with steps scaled by the running size of each slope and falling to 0 along a cosine.
 *
 * <p>Sources (from memory): Kingma and Ba (2015), Adam: a method for stochastic optimization, ICLR;
 * Loshchilov and Hutter (2017), SGDR, ICLR, for the cosine; He et al. (2015), Delving deep into
 * rectifiers, ICCV, for the first weights. The seed is fixed and powers are strict ones: the same
 * cases give the same network on any machine.
 */
final class FitNetwork {
  /** Units; settled with the other settings by cross-validation by photo, flat within a half. */
  private static final int UNITS = 24;

  private static final int STEPS = 8000;
  private static final int DRAW = 128;
  private static final double RATE = 4e-3;

  /** Penalty on half the squared weights, against a mean loss. */
  private static final float RIDGE = 1e-4f;

  private static final double KEPT_MEAN = 0.9;
  private static final double KEPT_SQUARE = 0.999;
  private static final double LEAST_SIZE = 1e-8;
  private static final long SEED = 20_263;

  private final float[][] x;
  private final boolean[] leaf;
  private final float[] weight;
  private final int terms;

  /** Each unit's weights and constant, then the output's, one after the other. */
  private final float[] at;

  private final float[] slope;
  private final float[] hidden = new float[UNITS];

  private FitNetwork(float[][] x, boolean[] leaf, double[] weight) {
    this.x = x;
    this.leaf = leaf;
    this.terms = x[0].length;
    this.weight = new float[x.length];
    double mean = Arrays.stream(weight).average().orElseThrow();
    for (int i = 0; i < x.length; i++) {
      this.weight[i] = (float) (weight[i] / mean);
    }
    this.at = new float[UNITS * (terms + 1) + UNITS + 1];
    this.slope = new float[at.length];
  }

  /**
   * Fits a network.
   *
   * @param x terms of each case, near -1..1
   * @param leaf whether each is leaf
   * @param weight of each, above 0
   * @return the fitted network
   */
  static FitNetwork to(float[][] x, boolean[] leaf, double[] weight) {
    FitNetwork network = new FitNetwork(x, leaf, weight);
    network.fit(new Random(SEED));
    return network;
  }

  private void fit(Random random) {
    for (int i = 0; i < at.length; i++) {
      boolean ofUnit = i < UNITS * (terms + 1);
      boolean constant = ofUnit ? i % (terms + 1) == terms : i == at.length - 1;
      double size = Math.sqrt(2.0 / (ofUnit ? terms : UNITS));
      at[i] = constant ? 0 : (float) (size * random.nextGaussian());
    }
    double[] mean = new double[at.length];
    double[] square = new double[at.length];
    for (int step = 1; step <= STEPS; step++) {
      for (int i = 0; i < at.length; i++) {
        slope[i] = RIDGE * at[i];
      }
      for (int n = 0; n < DRAW; n++) {
        addSlope(random.nextInt(x.length));
      }
      double rate = RATE / 2 * (1 + StrictMath.cos(Math.PI * step / STEPS));
      double meanSeen = 1 - StrictMath.pow(KEPT_MEAN, step);
      double squareSeen = 1 - StrictMath.pow(KEPT_SQUARE, step);
      for (int i = 0; i < at.length; i++) {
        mean[i] += (1 - KEPT_MEAN) * (slope[i] - mean[i]);
        square[i] += (1 - KEPT_SQUARE) * ((double) slope[i] * slope[i] - square[i]);
        at[i] -=
            (float) (rate * mean[i] / meanSeen / (Math.sqrt(square[i] / squareSeen) + LEAST_SIZE));
      }
    }
  }

  /** Adds the slope of a case's loss. */
  private void addSlope(int n) {
    float[] row = x[n];
    int out = UNITS * (terms + 1);
    float score = at[out + UNITS];
    for (int j = 0; j < UNITS; j++) {
      int unit = j * (terms + 1);
      float sum = at[unit + terms];
      for (int k = 0; k < terms; k++) {
        sum += at[unit + k] * row[k];
      }
      hidden[j] = Math.max(0, sum);
      score += at[out + j] * hidden[j];
    }
    double off = 1 / (1 + StrictMath.exp(-score)) - (leaf[n] ? 1 : 0);
    float pull = (float) (off * weight[n] / DRAW);
    slope[out + UNITS] += pull;
    for (int j = 0; j < UNITS; j++) {
      slope[out + j] += pull * hidden[j];
      if (hidden[j] > 0) {
        int unit = j * (terms + 1);
        float back = pull * at[out + j];
        slope[unit + terms] += back;
        for (int k = 0; k < terms; k++) {
          slope[unit + k] += back * row[k];
        }
      }
    }
  }

  /** Returns each unit's weights and its constant. */
  double[][] units() {
    double[][] units = new double[UNITS][];
    for (int j = 0; j < UNITS; j++) {
      units[j] = part(j * (terms + 1), terms + 1);
    }
    return units;
  }

  /** Returns the output's weights and its constant. */
  double[] output() {
    return part(UNITS * (terms + 1), UNITS + 1);
  }

  private double[] part(int from, int count) {
    double[] part = new double[count];
    for (int i = 0; i < count; i++) {
      part[i] = at[from + i];
    }
    return part;
  }
}
