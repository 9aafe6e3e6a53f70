// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.growth.CurveModel;

/**
 * One plant's curve: the cohort's, moved by what the plant's own photos say, with its uncertainty.
 *
 * <p>The posterior is normal in the working parameters. A forecast is of the true ln area: the
 * persistent error of the photos is taken out as far as it can be told, and counts in the
 * uncertainty.
 */
public final class PlantCurve {
  /** What the filter left: the posterior, and each photo with what was foreseen for it. */
  record Trace(List<Innovation> photos, List<Double> discountedDat, double lastDat) {
    Trace {
      photos = List.copyOf(photos);
      discountedDat = List.copyOf(discountedDat);
    }
  }

  private final CohortCurve cohort;
  private final CurveModel model;
  private final double[] theta;
  private final double[] mean;
  private final double[][] covariance;
  private final double wanderPerDay;
  private final Trace trace;

  PlantCurve(CohortCurve cohort, PlantFilter filter, Trace trace) {
    this.cohort = cohort;
    this.model = cohort.model();
    this.theta = cohort.theta();
    this.wanderPerDay = cohort.spread().wanderPerDay;
    this.mean = filter.mean.clone();
    this.covariance = new double[mean.length][];
    for (int i = 0; i < mean.length; i++) {
      covariance[i] = filter.covariance[i].clone();
    }
    this.trace = trace;
  }

  /**
   * Returns the true ln area (cm2) expected at a day at or after the last photo; between photos,
   * the curve as it stands after the last.
   *
   * @param dat days after transplant
   */
  public Forecast lnArea(double dat) {
    int p = theta.length;
    double[] g = new double[p + 2];
    double[] gradient = new double[p];
    double value = model.lnArea(dat, theta, gradient) + mean[p + 1];
    for (int j = 0; j < p; j++) {
      value += gradient[j] * mean[j];
      g[j] = gradient[j];
    }
    g[p + 1] = 1;
    double ahead = !Double.isNaN(trace.lastDat()) ? Math.max(0, dat - trace.lastDat()) : 0;
    double variance = quadratic(g) + wanderPerDay * ahead + cohort.modelVariance(dat);
    return new Forecast(value, Math.sqrt(variance));
  }

  /** Returns the relative growth rate per day of the plant's curve at a day. */
  public Forecast rgrPerDay(double dat) {
    int p = theta.length;
    double[] g = new double[p + 2];
    double[] gradient = new double[p];
    double value = model.rgrPerDay(dat, theta, gradient);
    for (int j = 0; j < p; j++) {
      value += gradient[j] * mean[j];
      g[j] = gradient[j];
    }
    return new Forecast(value, Math.sqrt(quadratic(g)));
  }

  /** Returns the plant's expected working parameters, in the order of the model. */
  public List<Double> working() {
    List<Double> out = new ArrayList<>();
    for (int j = 0; j < theta.length; j++) {
      out.add(theta[j] + mean[j]);
    }
    return out;
  }

  /** Returns the posterior covariance of working parameters {@code i} and {@code j}. */
  public double covariance(int i, int j) {
    return covariance[i][j];
  }

  /** Returns each open photo with what the earlier ones foretold, in time order. */
  public List<Innovation> innovations() {
    return trace.photos();
  }

  /** Returns the days of photos more than four deviations off what was foretold. */
  public List<Double> discountedDat() {
    return trace.discountedDat();
  }

  private double quadratic(double[] g) {
    double sum = 0;
    for (int i = 0; i < g.length; i++) {
      for (int j = 0; j < g.length; j++) {
        sum += g[i] * covariance[i][j] * g[j];
      }
    }
    return Math.max(0, sum);
  }
}
