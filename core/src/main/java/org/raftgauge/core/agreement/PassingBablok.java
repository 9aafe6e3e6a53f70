// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A line that compares two methods without assuming how their errors are distributed: the shifted
 * median of all slopes between two points.
 *
 * <p>Source: Passing and Bablok 1983, Journal of Clinical Chemistry and Clinical Biochemistry
 * 21:709-720. Assumes a slope near 1 or above 0; many tied values make the interval approximate.
 *
 * @param slope y per x
 * @param intercept y at x = 0, the median of {@code y - slope x}
 * @param slopeLo95 lower end of the slope's 95 % interval
 * @param slopeHi95 upper end
 * @param interceptLo95 lower end of the intercept's 95 % interval
 * @param interceptHi95 upper end
 * @param slopes number of slopes used
 * @param offset number of slopes under -1
 */
public record PassingBablok(
    double slope,
    double intercept,
    double slopeLo95,
    double slopeHi95,
    double interceptLo95,
    double interceptHi95,
    int slopes,
    int offset) {
  /**
   * Fits.
   *
   * @param x values by one method, at least 4, not all the same
   * @param y values by the other
   * @return the line
   */
  public static PassingBablok fit(double[] x, double[] y) {
    Samples.pairs(x, y, 4);
    double[] slopes = slopes(x, y);
    int count = slopes.length;
    int offset = (int) Arrays.stream(slopes).filter(s -> s < -1).count();
    double slope =
        count % 2 == 1
            ? slopes[(count - 1) / 2 + offset]
            : (slopes[count / 2 - 1 + offset] + slopes[count / 2 + offset]) / 2;
    double n = x.length;
    double z = new NormalDistribution().inverseCumulativeProbability(0.975);
    double reach = z * Math.sqrt(n * (n - 1) * (2 * n + 5) / 18);
    int first = (int) Math.round((count - reach) / 2);
    double low = slopes[Math.max(0, first + offset - 1)];
    double high = slopes[Math.min(count - 1, count - first + offset)];
    return new PassingBablok(
        slope,
        intercept(x, y, slope),
        low,
        high,
        intercept(x, y, high),
        intercept(x, y, low),
        count,
        offset);
  }

  /** Returns all slopes between two points in order, without 0/0 and -1. */
  private static double[] slopes(double[] x, double[] y) {
    double[] slopes = new double[x.length * (x.length - 1) / 2];
    int count = 0;
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        double dx = x[i] - x[j];
        double dy = y[i] - y[j];
        double slope = dx == 0 ? Math.copySign(Double.MAX_VALUE, dy) : dy / dx;
        boolean same = dx == 0 && dy == 0;
        if (!same && slope != -1) {
          slopes[count++] = slope;
        }
      }
    }
    if (count == 0) {
      throw new IllegalArgumentException("all points are the same");
    }
    double[] sorted = Arrays.copyOf(slopes, count);
    Arrays.sort(sorted);
    return sorted;
  }

  private static double intercept(double[] x, double[] y, double slope) {
    double[] left = new double[x.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = y[i] - slope * x[i];
    }
    return Robust.median(left);
  }
}
