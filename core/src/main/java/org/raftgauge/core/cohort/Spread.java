// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.raftgauge.core.growth.CurveModel;

/**
 * How the plants of a cohort spread about its curve: covariance of the working parameters between
 * plants, wandering of a plant's ln area about its own curve (variance per day), and scatter of a
 * photo beyond its stated error (variance).
 */
final class Spread {
  /** Working values: plants differ by 17 % for good, by 10 % in rate, and by 20 % in start. */
  private static final double SIZE_SD = 0.17;

  private static final double RATE_SD = 0.1;
  private static final double START_SD = 0.2;

  final double[][] plants;
  final double wanderPerDay;
  final double scatter;

  Spread(double[][] plants, double wanderPerDay, double scatter) {
    this.plants = plants;
    this.wanderPerDay = wanderPerDay;
    this.scatter = scatter;
  }

  /** Returns what is assumed before the plants have told: wandering 1.5 % a day, scatter 2 %. */
  static Spread assumed(CurveModel model, double[] theta) {
    return new Spread(assumedPlants(model, theta), 0.015 * 0.015, 0.02 * 0.02);
  }

  private static double[][] assumedPlants(CurveModel model, double[] theta) {
    int p = theta.length;
    double[][] out = new double[p][p];
    out[0][0] = SIZE_SD * SIZE_SD;
    if (model == CurveModel.EXPONENTIAL) {
      out[1][1] = Math.pow(RATE_SD * theta[1], 2);
      return out;
    }
    out[1][1] = RATE_SD * RATE_SD;
    // A shift of the day by START_SD / rate changes an early plant's ln area by START_SD.
    out[2][2] = Math.pow(START_SD / Math.exp(theta[1]), 2);
    if (p > 3) {
      out[3][3] = RATE_SD * RATE_SD;
    }
    return out;
  }
}
