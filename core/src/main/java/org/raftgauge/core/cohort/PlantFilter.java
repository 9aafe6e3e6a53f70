// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.Series;

/**
 * Follows one plant through its photos by a Kalman filter.
 *
 * <p>State: deviation of the plant's working parameters from the cohort's, the persistent error of
 * its areas, and how far its ln area has wandered off its own curve (a random walk). Observed ln
 * area = cohort's curve + gradient x deviation + persistent error + wandering + photo error: linear
 * but for the curve's bend over the spread of plants. A photo more than three deviations off moves
 * the state only as far as one at three would (Huber). A closed photo is a lower bound: the state
 * takes the mean and variance of the truncated normal.
 *
 * <p>Sources: Kalman 1960, J. Basic Eng. 82:35-45; Lindstrom and Bates 1990, Biometrics 46:673-687
 * (linearised mixed model); Cipra and Romera 1991, Kybernetika 27:145-156 (robust filter).
 */
final class PlantFilter {
  private static final double BEND = 3;
  private static final double LN_2PI = Math.log(2 * Math.PI);

  private final CurveModel model;
  private final double[] theta;
  private final double[][] prior;
  private final Spread spread;
  private final double persistent;
  private final int p;
  private final int d;

  final double[] mean;
  final double[][] covariance;
  double lastDat;
  double logLikelihood;
  double distance;
  private final double[] gain;
  private final double[] gradient;
  private double expected;
  private double variance;
  private double bent;

  /**
   * Makes a filter.
   *
   * @param cohort the cohort's curve and the spread of its plants
   * @param prior covariance of a new plant's working parameters
   * @param persistent persistent error of a site's ln area (sd)
   */
  PlantFilter(Estimated cohort, double[][] prior, double persistent) {
    this.model = cohort.model();
    this.theta = cohort.theta();
    this.prior = prior;
    this.spread = cohort.spread();
    this.persistent = persistent;
    this.p = theta.length;
    this.d = p + 2;
    this.mean = new double[d];
    this.covariance = new double[d][d];
    this.gain = new double[d];
    this.gradient = new double[p];
  }

  /** Starts a new plant. */
  void restart() {
    for (int i = 0; i < d; i++) {
      mean[i] = 0;
      for (int j = 0; j < d; j++) {
        covariance[i][j] = i < p && j < p ? prior[i][j] : 0;
      }
    }
    covariance[p][p] = persistent * persistent;
    lastDat = Double.NaN;
    logLikelihood = 0;
    distance = 0;
  }

  /** Foresees photo {@code i} and then takes it in. */
  void take(Series series, int i) {
    double error = series.errorFraction(i);
    foresee(series.dat(i), error * error + spread.scatter);
    if (series.isClosed(i)) {
      takeBound(series.lnArea(i));
    } else {
      takeArea(series.lnArea(i));
    }
  }

  /** Returns the last open photo's innovation in deviations, bent to at most three. */
  double z() {
    return bent;
  }

  double expected() {
    return expected;
  }

  double sd() {
    return Math.sqrt(variance);
  }

  private void foresee(double dat, double photoVariance) {
    if (!Double.isNaN(lastDat)) {
      covariance[d - 1][d - 1] += spread.wanderPerDay * Math.max(0, dat - lastDat);
    }
    lastDat = dat;
    expected = model.lnArea(dat, theta, gradient) + mean[p] + mean[p + 1];
    for (int j = 0; j < p; j++) {
      expected += gradient[j] * mean[j];
    }
    variance = photoVariance;
    for (int i = 0; i < d; i++) {
      double[] row = covariance[i];
      double sum = row[p] + row[p + 1];
      for (int j = 0; j < p; j++) {
        sum += row[j] * gradient[j];
      }
      gain[i] = sum;
      variance += sum * (i < p ? gradient[i] : 1);
    }
  }

  private void takeArea(double lnArea) {
    double sd = Math.sqrt(variance);
    double z = (lnArea - expected) / sd;
    bent = Math.max(-BEND, Math.min(BEND, z));
    double loss = Math.abs(z) <= BEND ? z * z : 2 * BEND * Math.abs(z) - BEND * BEND;
    logLikelihood -= 0.5 * (LN_2PI + Math.log(variance) + loss);
    distance += loss;
    // A bent photo says less: its information shrinks with its weight.
    update(bent * sd, z == 0 ? 1 : bent / z);
  }

  private void takeBound(double bound) {
    double sd = Math.sqrt(variance);
    double a = (bound - expected) / sd;
    double hazard = NormalTail.hazard(a);
    logLikelihood += NormalTail.logUpper(a);
    update(sd * hazard, Math.max(0, Math.min(1, hazard * (hazard - a))));
  }

  /** Moves the mean by gain x shift and takes {@code share} of the photo's information. */
  private void update(double shift, double share) {
    for (int i = 0; i < d; i++) {
      double k = gain[i] / variance;
      mean[i] += k * shift;
      for (int j = 0; j < d; j++) {
        covariance[i][j] -= k * share * gain[j];
      }
    }
  }
}
