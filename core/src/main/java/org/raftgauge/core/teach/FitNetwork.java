// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

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
  private static final int DRAW = 128;
  private static final double RATE = 4e-3;

  private static final double KEPT_MEAN = 0.9;
  private static final double KEPT_SQUARE = 0.999;
  private static final double LEAST_SIZE = 1e-8;
  private final Cases cases;
  private final Size size;
  private final int terms;
  private final int units;

  /** Each unit's weights and constant, then the output's, one after the other. */
  private final float[] at;

  private final float[] slope;
  private final float[] hidden;

  /**
   * How large a network is and how long it is fitted.
   *
   * @param units of its hidden layer
   * @param steps of the fit
   * @param ridge penalty on half the squared weights, against a mean loss
   */
  record Size(int units, int steps, double ridge) {}

  private FitNetwork(Cases cases, Size size) {
    this.cases = cases;
    this.size = size;
    this.terms = cases.x()[0].length;
    this.units = size.units();
    this.hidden = new float[units];
    this.at = new float[units * (terms + 1) + units + 1];
    this.slope = new float[at.length];
  }

  /**
   * Fits a network.
   *
   * @param cases what it is to tell, terms near -1..1
   * @param size of the network
   * @param seed of the first weights and of the draws
   * @return the fitted network
   */
  static FitNetwork to(Cases cases, Size size, long seed) {
    FitNetwork network = new FitNetwork(cases, size);
    network.fit(new Random(seed));
    return network;
  }

  private void fit(Random random) {
    for (int i = 0; i < at.length; i++) {
      boolean ofUnit = i < units * (terms + 1);
      boolean constant = ofUnit ? i % (terms + 1) == terms : i == at.length - 1;
      double spread = Math.sqrt(2.0 / (ofUnit ? terms : units));
      at[i] = constant ? 0 : (float) (spread * random.nextGaussian());
    }
    double[] mean = new double[at.length];
    double[] square = new double[at.length];
    int steps = size.steps();
    float ridge = (float) size.ridge();
    for (int step = 1; step <= steps; step++) {
      for (int i = 0; i < at.length; i++) {
        slope[i] = ridge * at[i];
      }
      for (int n = 0; n < DRAW; n++) {
        addSlope(random.nextInt(cases.x().length));
      }
      double rate = RATE / 2 * (1 + StrictMath.cos(Math.PI * step / steps));
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
    float[] row = cases.x()[n];
    int out = units * (terms + 1);
    float score = cases.known()[n] + at[out + units];
    for (int j = 0; j < units; j++) {
      int unit = j * (terms + 1);
      float sum = at[unit + terms];
      for (int k = 0; k < terms; k++) {
        sum += at[unit + k] * row[k];
      }
      hidden[j] = Math.max(0, sum);
      score += at[out + j] * hidden[j];
    }
    double off = 1 / (1 + StrictMath.exp(-score)) - (cases.leaf()[n] ? 1 : 0);
    float pull = (float) (off * cases.weight()[n] / DRAW);
    slope[out + units] += pull;
    for (int j = 0; j < units; j++) {
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
    double[][] all = new double[units][];
    for (int j = 0; j < units; j++) {
      all[j] = part(j * (terms + 1), terms + 1);
    }
    return all;
  }

  /** Returns the output's weights and its constant. */
  double[] output() {
    return part(units * (terms + 1), units + 1);
  }

  private double[] part(int from, int count) {
    double[] part = new double[count];
    for (int i = 0; i < count; i++) {
      part[i] = at[from + i];
    }
    return part;
  }
}
