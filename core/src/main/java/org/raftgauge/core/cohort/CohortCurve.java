// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/**
 * A cohort's curve, how sure it is, and how its plants spread about it.
 *
 * <p>Immutable; may be used by several threads at once.
 */
public final class CohortCurve implements CohortFit {
  /** A photo this many deviations off what was foretold is named as discounted. */
  private static final double NAMED = 4;

  private final Estimated estimated;
  private final CurveModel model;
  private final double[] theta;
  private final double[][] error;
  private final Spread spread;
  private final Basis basis;

  /** What the curve rests on: plants, days of the photos, persistent error, other models. */
  record Basis(
      int plants,
      double firstDat,
      double lastDat,
      double persistent,
      Extrapolation extrapolation) {}

  CohortCurve(Estimated estimated, Basis basis) {
    this.estimated = estimated;
    this.model = estimated.model();
    this.theta = estimated.theta();
    this.error = estimated.error();
    this.spread = estimated.spread();
    this.basis = basis;
  }

  /** Returns the curve of the cohort's typical plant. */
  public GrowthCurve curve() {
    return GrowthCurve.ofWorking(model, theta);
  }

  /** Returns how many plants the curve rests on. */
  public int plants() {
    return basis.plants();
  }

  /** Returns the last day of any photo of the cohort. */
  public double lastDat() {
    return basis.lastDat();
  }

  /** Returns why the cohort's own photos leave the asymptote open; empty where they do not. */
  public Optional<String> asymptoteDoubt() {
    return basis.extrapolation().doubt();
  }

  /** Returns the standard error of working parameter {@code i} of the cohort's curve. */
  public double standardError(int i) {
    return Math.sqrt(error[i][i]);
  }

  /** Returns the standard deviation between plants of working parameter {@code i}. */
  public double plantSd(int i) {
    return Math.sqrt(spread.plants[i][i]);
  }

  /** Returns how far a plant's ln area wanders off its own curve in one day (sd). */
  public double wanderPerDay() {
    return Math.sqrt(spread.wanderPerDay);
  }

  /** Returns the scatter of a photo's ln area beyond its stated error (sd). */
  public double scatter() {
    return Math.sqrt(spread.scatter);
  }

  /** Returns the typical plant's ln area (cm2) at a day, with the error of the curve only. */
  public Forecast typicalLnArea(double dat) {
    return at(dat, error, modelVariance(dat));
  }

  /** Returns the ln area (cm2) at a day of a plant of which no photo is known. */
  public Forecast lnArea(double dat) {
    double wandered = spread.wanderPerDay * Math.max(0, dat - basis.firstDat());
    return at(dat, sum(), wandered + modelVariance(dat));
  }

  /** Returns the variance of ln area past the last photo from not knowing the model. */
  double modelVariance(double dat) {
    return basis.extrapolation().variance(curve(), basis.lastDat(), dat);
  }

  /**
   * Returns how much the typical plant's ln area grows from one day to a later one, with the error
   * that all plants of the cohort share: that of the curve's growth and of the choice of model.
   * Where a plant stands on the first day is its own photos' business.
   *
   * @param fromDat the first day, such as that of the last photos
   * @param toDat the later day
   */
  public Forecast lnGrowth(double fromDat, double toDat) {
    double[] from = new double[theta.length];
    double[] to = new double[theta.length];
    double mean = -model.lnArea(fromDat, theta, from) + model.lnArea(toDat, theta, to);
    double variance = modelVariance(toDat);
    for (int i = 0; i < to.length; i++) {
      for (int j = 0; j < to.length; j++) {
        variance += (to[i] - from[i]) * error[i][j] * (to[j] - from[j]);
      }
    }
    return new Forecast(mean, Math.sqrt(Math.max(0, variance)));
  }

  private Forecast at(double dat, double[][] covariance, double extra) {
    double[] g = new double[theta.length];
    double mean = model.lnArea(dat, theta, g);
    double variance = extra;
    for (int i = 0; i < g.length; i++) {
      for (int j = 0; j < g.length; j++) {
        variance += g[i] * covariance[i][j] * g[j];
      }
    }
    return new Forecast(mean, Math.sqrt(Math.max(0, variance)));
  }

  /** Returns the typical plant's relative growth rate per day at a day. */
  public double rgrPerDay(double dat) {
    return model.rgrPerDay(dat, theta, new double[theta.length]);
  }

  /**
   * Returns a plant's curve from its photos; with none, the cohort's.
   *
   * @param series the plant's areas
   */
  public PlantCurve forPlant(Series series) {
    PlantFilter filter = new PlantFilter(estimated, sum(), basis.persistent());
    filter.restart();
    List<Innovation> photos = new ArrayList<>(series.size());
    List<Double> discounted = new ArrayList<>(0);
    for (int i = 0; i < series.size(); i++) {
      filter.take(series, i);
      if (!series.isClosed(i)) {
        Innovation innovation =
            new Innovation(series.dat(i), series.lnArea(i), filter.expected(), filter.sd());
        photos.add(innovation);
        if (Math.abs(innovation.z()) > NAMED) {
          discounted.add(series.dat(i));
        }
      }
    }
    return new PlantCurve(this, filter, new PlantCurve.Trace(photos, discounted, filter.lastDat));
  }

  private double[][] sum() {
    double[][] out = new double[theta.length][theta.length];
    for (int i = 0; i < theta.length; i++) {
      for (int j = 0; j < theta.length; j++) {
        out[i][j] = error[i][j] + spread.plants[i][j];
      }
    }
    return out;
  }

  CurveModel model() {
    return model;
  }

  double[] theta() {
    return theta;
  }

  Spread spread() {
    return spread;
  }
}
