// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import org.raftgauge.core.leastsquares.Interval;
import org.raftgauge.core.leastsquares.Points;
import org.raftgauge.core.leastsquares.ProfileInterval;
import org.raftgauge.core.leastsquares.Solved;

/**
 * A fitted growth curve: parameters and what follows from them, each with its uncertainty by the
 * delta method on Student's t, and no farther than the points carry.
 */
public final class Fitted implements GrowthFit {
  /** Largest relative standard error at which an asymptote counts as identified; working value. */
  private static final double ASYMPTOTE_ERROR = 0.25;

  /** Largest standard error of the log of the rate: the rate is then three errors off none. */
  private static final double RATE_ERROR = 1.0 / 3;

  /** How far past the last point a curve is read, as a share of the span of the points. */
  private static final double REACH_IDENTIFIED = 1;

  private static final double REACH_OTHERWISE = 0.25;

  /** What was fitted: the series, on which scale, and the places of points left out. */
  record Data(Series series, FitRule.Scale scale, List<Integer> bad) {}

  private final Candidate best;
  private final Points points;
  private final Data data;
  private final GrowthCurve curve;
  private final double quantile;

  Fitted(Candidate best, Points points, Data data) {
    this.best = best;
    this.points = points;
    this.data = data;
    this.curve = GrowthCurve.ofWorking(best.model(), best.fit().parameters());
    this.quantile =
        new TDistribution(best.fit().degreesOfFreedom()).inverseCumulativeProbability(0.975);
  }

  /** Returns the curve. */
  public GrowthCurve curve() {
    return curve;
  }

  /** Returns the fit in working parameters: covariance, sum of squares, likelihood, AICc. */
  public Solved working() {
    return best.fit();
  }

  /** Returns the standard error of parameter {@code i} of the curve, in its own unit. */
  public double standardError(int i) {
    return best.fit().standardError(i) * best.model().parameterSlope(i, best.fit().parameters());
  }

  /** Returns parameter {@code i} with its delta-method interval. */
  public Estimate parameter(int i) {
    return Estimate.of(curve.parameters().get(i), standardError(i), quantile);
  }

  /** Returns the 95 % profile-likelihood interval of parameter {@code i}. */
  public Interval profile(int i) {
    Interval interval =
        ProfileInterval.of(CurveMean.of(best.model(), data.scale()), points, best.fit(), i);
    return new Interval(natural(interval.lo(), i), natural(interval.hi(), i));
  }

  private OptionalDouble natural(OptionalDouble end, int i) {
    if (end.isEmpty() || !best.model().isLogged(i)) {
      return end;
    }
    return OptionalDouble.of(Math.exp(end.getAsDouble()));
  }

  /** Returns the asymptote in cm2 where the curve has one and the points identify it. */
  public OptionalDouble asymptoteCm2() {
    return best.model().hasAsymptote() && asymptoteDoubt().isEmpty()
        ? OptionalDouble.of(curve.parameters().get(0))
        : OptionalDouble.empty();
  }

  /**
   * Returns why the asymptote is not identified; empty where it is, or the curve has none.
   *
   * <p>It is not where its relative standard error is over 0.25 or that of the rate over 1/3, or
   * where the last open point lies before the curve's inflection: there the asymptote is a guess of
   * the model, however small its nominal error.
   */
  public Optional<String> asymptoteDoubt() {
    if (!best.model().hasAsymptote()) {
      return Optional.empty();
    }
    double error = best.fit().standardError(0);
    if (!(error <= ASYMPTOTE_ERROR)) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "asymptote not identified: its standard error is %.0f %% of it",
              Math.min(100 * error, 1e6)));
    }
    if (!(best.fit().standardError(1) <= RATE_ERROR)) {
      return Optional.of("asymptote not identified: the rate is less than three errors from none");
    }
    double last = lastOpenDat();
    if (best.model() != CurveModel.MONOMOLECULAR && last < curve.parameters().get(2)) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "asymptote not identified: the last open photo (day %.1f) is before the inflection"
                  + " (day %.1f)",
              last,
              curve.parameters().get(2)));
    }
    return Optional.empty();
  }

  /** Returns the last day to which the curve may be read: past that it would be guessing. */
  public double farthestDat() {
    double last = data.series().dat(data.series().size() - 1);
    double span = last - data.series().dat(0);
    return last + span * (asymptoteCm2().isPresent() ? REACH_IDENTIFIED : REACH_OTHERWISE);
  }

  /** Returns ln area at a day with the curve's own uncertainty; empty past the farthest day. */
  public Optional<Estimate> lnArea(double dat) {
    if (dat > farthestDat()) {
      return Optional.empty();
    }
    double[] gradient = new double[best.model().parameterCount()];
    double value = best.model().lnArea(dat, best.fit().parameters(), gradient);
    return Double.isFinite(value)
        ? Optional.of(Estimate.of(value, best.fit().standardErrorOf(gradient), quantile))
        : Optional.empty();
  }

  /** Returns the relative growth rate per day at a day; empty past the farthest day. */
  public Optional<Estimate> rgrPerDay(double dat) {
    if (dat > farthestDat()) {
      return Optional.empty();
    }
    double[] gradient = new double[best.model().parameterCount()];
    double value = best.model().rgrPerDay(dat, best.fit().parameters(), gradient);
    return Double.isFinite(value)
        ? Optional.of(Estimate.of(value, best.fit().standardErrorOf(gradient), quantile))
        : Optional.empty();
  }

  /**
   * Returns the day on which the curve reaches a size.
   *
   * @param targetCm2 the size, above 0
   */
  public TargetDay dayOf(double targetCm2) {
    return new FindTarget(this, targetCm2).find();
  }

  Interval targetProfile(double targetCm2, double dat) {
    double[] start = best.fit().parameters();
    start[0] = dat;
    return FindTarget.profile(
        CurveMean.through(best.model(), data.scale(), targetCm2), points, start);
  }

  Estimate targetEstimate(double dat) {
    int p = best.model().parameterCount();
    double[] gradient = new double[p];
    best.model().lnArea(dat, best.fit().parameters(), gradient);
    double rgr = best.model().rgrPerDay(dat, best.fit().parameters(), new double[p]);
    return Estimate.of(dat, best.fit().standardErrorOf(gradient) / Math.abs(rgr), quantile);
  }

  /** Returns the first day of the series. */
  double firstDat() {
    return data.series().dat(0);
  }

  private double lastOpenDat() {
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.size(); i++) {
      if (points.weight(i) > 0 && !points.isLowerBound(i)) {
        last = Math.max(last, points.x(i));
      }
    }
    return last;
  }

  /** Returns the share of the variance of ln area that the curve explains, open points only. */
  public double r2LnArea() {
    return Explained.share(curve, points, data.series());
  }

  /** Returns the number of points that the fit rests on, closed ones included. */
  public int photos() {
    return data.series().size() - data.bad().size();
  }

  /** Returns how many of those were closed. */
  public int closedPhotos() {
    return photos() - points.observed();
  }

  /** Returns the days of the points that were left out because no curve comes near them. */
  public List<Double> discountedDat() {
    return data.bad().stream().map(data.series()::dat).toList();
  }
}
