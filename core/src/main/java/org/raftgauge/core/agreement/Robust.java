// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import java.util.Arrays;

/** Centre, scale and lines that a few wild values cannot pull. */
public final class Robust {
  /** {@code 1 / Phi^-1(0.75)}: makes the median absolute deviation a standard deviation. */
  public static final double MAD_TO_SD = 1.482602218505602;

  /** Tukey's bisquare constant for 95 % efficiency under normal errors. */
  private static final double BISQUARE = 4.685061;

  private static final int STEPS = 60;
  private static final double CLOSE = 1e-9;

  private Robust() {}

  /**
   * Returns the median.
   *
   * @param x at least one value
   * @return the middle one, or the mean of the two
   */
  public static double median(double... x) {
    Samples.finite(x, 1);
    double[] sorted = x.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /**
   * Returns the scaled median absolute deviation from the median, a standard deviation under normal
   * errors.
   *
   * @param x at least one value
   * @return 0 or more
   */
  public static double mad(double... x) {
    double centre = median(x);
    return MAD_TO_SD * median(Arrays.stream(x).map(v -> Math.abs(v - centre)).toArray());
  }

  /**
   * Returns modified z scores, {@code 0.6745 (x - median) / MAD}; over 3.5 is an outlier by the
   * usual rule.
   *
   * <p>Source: Iglewicz and Hoaglin 1993, "How to Detect and Handle Outliers".
   *
   * @param x values whose median absolute deviation is above 0
   * @return a score for each
   */
  public static double[] modifiedZ(double... x) {
    double centre = median(x);
    double raw = mad(x) / MAD_TO_SD;
    if (!(raw > 0)) {
      throw new IllegalArgumentException("more than half of the values are the same");
    }
    return Arrays.stream(x).map(v -> 0.6745 * (v - centre) / raw).toArray();
  }

  /**
   * Fits a linear model by Tukey's bisquare, from the median of many least-squares fits onward:
   * each row counts the less, the further it lies from the line, and not at all beyond 4.685 robust
   * standard deviations.
   *
   * <p>Source: Beaton and Tukey 1974, Technometrics 16:147-185; scale by the median absolute
   * residual at each step; start from least absolute deviations by the same iteration.
   *
   * @param design n rows of p numbers, as for {@link LinearFit#of}
   * @param y n values
   * @return the weight of each row, 0..1, at the end of the iteration
   */
  public static double[] bisquareWeights(double[][] design, double[] y) {
    double[] weights = new double[y.length];
    Arrays.fill(weights, 1);
    double[] b = LinearFit.of(design, y).coefficients();
    for (int step = 0; step < STEPS; step++) {
      double[] absolute = absoluteResiduals(design, y, b);
      double scale = Math.max(MAD_TO_SD * median(absolute), 1e-12);
      boolean first = step < STEPS / 3;
      for (int i = 0; i < y.length; i++) {
        weights[i] = first ? 1 / Math.max(absolute[i], scale / 10) : bisquare(absolute[i] / scale);
      }
      double[] next = LinearFit.weighted(design, y, weights).coefficients();
      boolean settled = distance(next, b) < CLOSE;
      b = next;
      if (!first && settled) {
        break;
      }
    }
    return weights;
  }

  private static double[] absoluteResiduals(double[][] design, double[] y, double[] b) {
    double[] absolute = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      absolute[i] = Math.abs(y[i] - LinearFit.dot(design[i], b));
    }
    return absolute;
  }

  private static double bisquare(double z) {
    double u = z / BISQUARE;
    return u < 1 ? (1 - u * u) * (1 - u * u) : 0;
  }

  private static double distance(double[] a, double[] b) {
    double largest = 0;
    for (int i = 0; i < a.length; i++) {
      largest = Math.max(largest, Math.abs(a[i] - b[i]) / (1 + Math.abs(b[i])));
    }
    return largest;
  }
}
