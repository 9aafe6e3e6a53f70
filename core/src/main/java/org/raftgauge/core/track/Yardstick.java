// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Optional;
import java.util.function.DoubleFunction;
import org.hipparchus.distribution.continuous.TDistribution;
import org.raftgauge.core.book.CropCurve;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.reference.SmoothReference;

/** What healthy plants of a crop are known to do, whatever grows tonight. */
final class Yardstick {
  /** Spread of whole cycles that is taken at the least: a season, a lot of seed. */
  private static final double LEAST_SHIFT_SD = 0.05;

  /** Spread of ln(area) of a whole raft about the book's curve: our own choice. */
  private static final double BOOK_SD = 0.25;

  private static final double NORMAL_90 = 1.2815515655446004;

  private final Basis basis;
  private final DoubleFunction<Optional<Double>> lnArea;
  private final DoubleFunction<Optional<Double>> rate;
  private final double sd;

  private Yardstick(
      Basis basis,
      DoubleFunction<Optional<Double>> lnArea,
      DoubleFunction<Optional<Double>> rate,
      double sd) {
    this.basis = basis;
    this.lnArea = lnArea;
    this.rate = rate;
    this.sd = sd;
  }

  /**
   * Makes one of past cycles. With few of them their spread is hardly known, so it is widened by
   * Student's t.
   */
  static Yardstick of(SmoothReference cycles) {
    return new Yardstick(Basis.CYCLES, cycles::lnArea, cycles::rgrPerDay, sdOf(cycles));
  }

  /**
   * Makes one of past cycles on degree-days.
   *
   * @param cycles on degree-days
   * @param degreeDays those of the cohort by its age in days
   */
  static Yardstick of(SmoothReference cycles, DoubleFunction<Optional<Double>> degreeDays) {
    return new Yardstick(
        Basis.DEGREE_DAYS,
        age -> degreeDays.apply(age).flatMap(cycles::lnArea),
        age ->
            degreeDays
                .apply(age)
                .flatMap(cycles::rgrPerDay)
                .flatMap(perDegreeDay -> perDay(degreeDays, age).map(k -> k * perDegreeDay)),
        sdOf(cycles));
  }

  /** Returns the degree-days of the day before an age, or of the part of it since age 0, by day. */
  private static Optional<Double> perDay(DoubleFunction<Optional<Double>> degreeDays, double age) {
    double days = Math.min(1, age);
    return degreeDays
        .apply(age)
        .flatMap(now -> degreeDays.apply(age - days).map(before -> (now - before) / days))
        .filter(Double::isFinite);
  }

  private static double sdOf(SmoothReference cycles) {
    double t = new TDistribution(cycles.cycles() - 1.0).inverseCumulativeProbability(0.9);
    double shift =
        Math.max(LEAST_SHIFT_SD, cycles.shiftSd()) * Math.sqrt(1 + 1.0 / cycles.cycles());
    return Math.hypot(shift * t / NORMAL_90, cycles.shapeError());
  }

  /** Makes one of the crop's curve in the book. */
  static Yardstick of(CropCurve curve) {
    GrowthCurve grown =
        new GrowthCurve(CurveModel.valueOf(curve.model().name()), curve.parameters());
    return new Yardstick(
        Basis.CROP,
        age -> Optional.of(grown.lnArea(age)).filter(Double::isFinite),
        age -> Optional.of(grown.rgrPerDay(age)).filter(Double::isFinite),
        BOOK_SD);
  }

  Basis basis() {
    return basis;
  }

  /** Returns the ln of the median area in cm2, where it reaches that age. */
  Optional<Double> lnArea(double age) {
    return lnArea.apply(age);
  }

  /** Returns the growth rate, 1/day, where it reaches that age. */
  Optional<Double> rate(double age) {
    return rate.apply(age);
  }

  /** Returns the standard deviation of ln(area) of a whole healthy cohort about it. */
  double sd() {
    return sd;
  }
}
