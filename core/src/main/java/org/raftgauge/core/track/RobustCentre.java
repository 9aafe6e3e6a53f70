// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Arrays;

/**
 * A centre and a spread that a third of bad values does not move.
 *
 * <p>Tukey's biweight about the median, tuning 6 on the median absolute deviation (Mosteller and
 * Tukey 1977, "Data Analysis and Regression", chapter 10; from memory); the spread is 1.4826 times
 * the median absolute deviation.
 *
 * @param centre the centre
 * @param spread standard deviation of the bulk, 0 or more
 * @param n number of values
 */
record RobustCentre(double centre, double spread, int n) {
  private static final double TUNING = 6;
  private static final double TO_SD = 1.4826;
  private static final int STEPS = 5;

  /** Finds the centre of one or more values. */
  static RobustCentre of(double[] values) {
    double centre = median(values);
    double[] off = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      off[i] = Math.abs(values[i] - centre);
    }
    double deviation = median(off);
    for (int step = 0; step < STEPS && deviation > 0; step++) {
      double weights = 0;
      double sum = 0;
      for (double value : values) {
        double u = (value - centre) / (TUNING * deviation);
        double weight = Math.abs(u) < 1 ? (1 - u * u) * (1 - u * u) : 0;
        weights += weight;
        sum += weight * value;
      }
      centre = sum / weights;
    }
    return new RobustCentre(centre, TO_SD * deviation, values.length);
  }

  /** Returns the standard error of the centre, given what the spread is at least. */
  double standardError(double spreadAtLeast) {
    return 1.1 * Math.max(spread, spreadAtLeast) / Math.sqrt(n);
  }

  static double median(double[] values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("values must be one or more, got none");
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
