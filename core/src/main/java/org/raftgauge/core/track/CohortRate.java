// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Optional;

/**
 * The growth rate of a cohort's plants at their present age, 1/day, learnt from evening to evening;
 * it begins with that of past cycles or of the book where there are any.
 */
final class CohortRate {
  private static final double FIRST_RATE = 0.15;
  private static final double FIRST_RATE_SD = 0.1;
  private static final double SHAPE_RATE_SD = 0.04;
  private static final double RATE_DRIFT = 0.02;
  private static final double LEAST_SD = 0.03;

  /** Longest gap in days over which a rate tells of now. */
  private static final double LONGEST_DAYS = 4;

  private double rate = FIRST_RATE;
  private double variance = FIRST_RATE_SD * FIRST_RATE_SD;
  private boolean begun;

  double rate() {
    return rate;
  }

  double sd() {
    return Math.sqrt(variance);
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
    variance += RATE_DRIFT * RATE_DRIFT * days;
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
