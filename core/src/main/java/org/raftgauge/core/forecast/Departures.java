// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How single plants depart from the way of all: by a photo's error anew each evening, and by a walk
 * that they do not come back from. Told apart by how departures a few evenings apart differ more
 * than those of neighbouring evenings (a variogram's nugget and slope; Cressie 1993, Statistics for
 * Spatial Data, section 2.4), with medians, so that a bad photo does not count.
 *
 * @param photoSd of ln area
 * @param walkSd of ln area in a day
 * @param usualGapDays from one evening to the next
 */
record Departures(double photoSd, double walkSd, double usualGapDays) {
  /** Standard deviation over the median of absolute values, of normal values. */
  private static final double MAD = 1.4826;

  private static final int FAR = 4;

  /** Fewer pairs of evenings than these tell nothing. */
  private static final int FEWEST = 20;

  /** What is taken where too few evenings tell; working values. */
  private static final Departures USUAL = new Departures(0.04, 0.015, 2);

  /**
   * Finds both.
   *
   * @param plants age and ln area over the way, in the order of age
   */
  static Departures of(List<List<double[]>> plants) {
    Lag near = Lag.of(plants, 1);
    Lag far = Lag.of(plants, FAR);
    if (near.pairs < FEWEST || far.pairs < FEWEST || far.days <= near.days) {
      return USUAL;
    }
    double walk = Math.max(0, (far.variance - near.variance) / (far.days - near.days));
    double photo = Math.max(0, near.variance - walk * near.days) / 2;
    return new Departures(Math.sqrt(photo), Math.sqrt(walk), near.days);
  }

  private record Lag(int pairs, double days, double variance) {
    private static Lag of(List<List<double[]>> plants, int lag) {
      List<Double> apart = new ArrayList<>();
      double days = 0;
      for (List<double[]> plant : plants) {
        for (int i = lag; i < plant.size(); i++) {
          apart.add(Math.abs(plant.get(i)[1] - plant.get(i - lag)[1]));
          days += plant.get(i)[0] - plant.get(i - lag)[0];
        }
      }
      double[] sorted = apart.stream().mapToDouble(v -> v).toArray();
      Arrays.sort(sorted);
      double sd = sorted.length == 0 ? 0 : MAD * sorted[sorted.length / 2];
      return new Lag(sorted.length, days / Math.max(1, sorted.length), sd * sd);
    }
  }

  /**
   * Returns the standard deviation of a departure told by the median of some evenings.
   *
   * @param evenings the last ones
   * @param days since the last of them
   */
  double sd(int evenings, double days) {
    double photo = Math.PI / 2 * photoSd * photoSd / evenings;
    double since = Math.max(0, days) + (evenings - 1) / 2.0 * usualGapDays;
    return Math.sqrt(photo + walkSd * walkSd * since);
  }
}
