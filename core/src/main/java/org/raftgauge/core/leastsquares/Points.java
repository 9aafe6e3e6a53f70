// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.Arrays;

/**
 * Observed points for a fit: {@code x}, {@code y}, a weight for each (1 / relative variance, 0
 * leaves the point out), and whether {@code y} is only a lower bound (a censored point).
 */
public final class Points {
  private final double[] x;
  private final double[] y;
  private final double[] weights;
  private final boolean[] bounds;

  private Points(double[] x, double[] y, double[] weights, boolean[] bounds) {
    this.x = x;
    this.y = y;
    this.weights = weights;
    this.bounds = bounds;
  }

  /**
   * Makes equally weighted, fully observed points.
   *
   * @param x the variable, finite
   * @param y the observations, finite, same length
   * @throws IllegalArgumentException if lengths differ or a number is not finite
   */
  public static Points of(double[] x, double[] y) {
    sameLength(x.length, y.length, "y");
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            "point " + i + " must be finite, got x " + x[i] + ", y " + y[i]);
      }
    }
    double[] ones = new double[x.length];
    Arrays.fill(ones, 1);
    return new Points(x.clone(), y.clone(), ones, new boolean[x.length]);
  }

  /**
   * Returns the same points with other weights.
   *
   * @param newWeights 1 / relative variance of each point, at least 0 and finite
   */
  public Points withWeights(double[] newWeights) {
    sameLength(x.length, newWeights.length, "weights");
    for (double w : newWeights) {
      if (!(w >= 0) || Double.isInfinite(w)) {
        throw new IllegalArgumentException("weights must be finite and >= 0, got " + w);
      }
    }
    return new Points(x, y, newWeights.clone(), bounds);
  }

  /** Returns the same points, those marked being lower bounds of what would have been observed. */
  public Points withLowerBounds(boolean[] lowerBound) {
    sameLength(x.length, lowerBound.length, "lowerBound");
    return new Points(x, y, weights, lowerBound.clone());
  }

  /** Returns the number of points, those of weight 0 included. */
  public int size() {
    return x.length;
  }

  /** Returns the variable of point {@code i}. */
  public double x(int i) {
    return x[i];
  }

  /** Returns the observation of point {@code i}. */
  public double y(int i) {
    return y[i];
  }

  /** Returns the weight of point {@code i}, at least 0. */
  public double weight(int i) {
    return weights[i];
  }

  /** Returns whether point {@code i} is only a lower bound. */
  public boolean isLowerBound(int i) {
    return bounds[i];
  }

  /** Returns how many points count and are fully observed. */
  public int observed() {
    int n = 0;
    for (int i = 0; i < x.length; i++) {
      n += weights[i] > 0 && !bounds[i] ? 1 : 0;
    }
    return n;
  }

  private static void sameLength(int expected, int got, String name) {
    if (expected != got) {
      throw new IllegalArgumentException(name + " must have length " + expected + ", got " + got);
    }
  }
}
