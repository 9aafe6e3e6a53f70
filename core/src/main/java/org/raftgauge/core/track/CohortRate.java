// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The growth rate of a cohort's plants at their present age, 1/day, learnt from evening to evening;
 * it begins with that of past cycles or of the book where there are any.
 */
final class CohortRate {
  private static final double FIRST_RATE = 0.15;
  private static final double FIRST_RATE_SD = 0.2;
  private static final double SHAPE_RATE_SD = 0.04;

  /** Least by which the rate wanders in a day, standard deviation. */
  private static final double RATE_DRIFT = 0.02;

  /**
   * Share of itself that the rate of a young plant may lose in a day: that of a Gompertz curve
   * loses its rate constant, which is near 0.1 for leafy crops; a working value.
   */
  private static final double DECLINE = 0.1;

  private static final double LEAST_CHANGE = 0.5;
  private static final double MOST_CHANGE = 1.5;
  private static final double LEAST_SD = 0.03;

  /** Longest gap in days over which a rate tells of now. */
  private static final double LONGEST_DAYS = 4;

  private double rate = FIRST_RATE;
  private double variance = FIRST_RATE_SD * FIRST_RATE_SD;
  private boolean begun;
  private OptionalDouble lastAge = OptionalDouble.empty();

  double rate() {
    return rate;
  }

  double sd() {
    return Math.sqrt(variance);
  }

  /**
   * Returns the standard deviation of the mean rate until the next look, 1/day: that of the mean of
   * a random walk over some days is a third of its end's.
   */
  double sdAhead(double days) {
    return Math.sqrt(variance + square(drift()) * days / 3);
  }

  /**
   * Carries the rate to the age of tonight as the yardstick's rate changes with age; without one it
   * stays.
   *
   * @param age of the plants tonight, days
   * @param yardstick what the cohort is held against besides itself
   */
  void carry(double age, Optional<Yardstick> yardstick) {
    if (begun && lastAge.isPresent()) {
      Optional<Double> before = yardstick.flatMap(y -> y.rate(lastAge.getAsDouble()));
      Optional<Double> now = yardstick.flatMap(y -> y.rate(age));
      if (before.filter(r -> r > 0).isPresent() && now.isPresent()) {
        rate *= Math.max(LEAST_CHANGE, Math.min(MOST_CHANGE, now.get() / before.get()));
      }
    }
    lastAge = OptionalDouble.of(age);
  }

  private double drift() {
    return Math.max(RATE_DRIFT, DECLINE * Math.abs(rate));
  }

  private static double square(double x) {
    return x * x;
  }

  /**
   * Learns from tonight's levels, before they are added to the patches.
   *
   * @param tonight good levels of the cohort
   * @param yardstick what it is held against besides itself
   */
  void learn(List<Cohort.Level> tonight, Optional<Yardstick> yardstick) {
    if (!begun) {
      begin(tonight, yardstick);
    }
    double[] rates =
        tonight.stream()
            .filter(l -> l.days() > 0 && l.days() <= LONGEST_DAYS)
            .mapToDouble(Cohort.Level::rate)
            .toArray();
    double days =
        tonight.stream().mapToDouble(Cohort.Level::days).filter(d -> d > 0).average().orElse(1);
    variance += square(drift()) * days;
    if (rates.length > 0) {
      RobustCentre centre = RobustCentre.of(rates);
      double se = centre.standardError(LEAST_SD / days);
      double gain = variance / (variance + se * se);
      rate += gain * (centre.centre() - rate);
      variance *= 1 - gain;
    }
  }

  private void begin(List<Cohort.Level> tonight, Optional<Yardstick> yardstick) {
    double age = tonight.stream().mapToDouble(l -> l.level().age()).average().orElse(0);
    Optional<Double> known = yardstick.flatMap(y -> y.rate(age));
    if (known.isPresent()) {
      rate = known.get();
      variance = SHAPE_RATE_SD * SHAPE_RATE_SD;
    }
    begun = true;
  }
}
