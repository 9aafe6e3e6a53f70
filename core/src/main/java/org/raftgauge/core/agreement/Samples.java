// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import java.util.Arrays;

/** Checks and plain sums that the methods share. */
final class Samples {

  private Samples() {}

  /** Checks that two arrays are of one length of at least {@code fewest}, all finite. */
  static void pairs(double[] x, double[] y, int fewest) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "x and y must be of one length, got " + x.length + " and " + y.length);
    }
    finite(x, fewest);
    finite(y, fewest);
  }

  /** Checks that there are at least {@code fewest} values, all finite. */
  static void finite(double[] x, int fewest) {
    if (x.length < fewest) {
      throw new IllegalArgumentException("values must be >= " + fewest + ", got " + x.length);
    }
    for (double value : x) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("values must be finite, got " + value);
      }
    }
  }

  static double mean(double[] x) {
    return Arrays.stream(x).sum() / x.length;
  }

  /** Returns the sum of products of deviations from the means. */
  static double cross(double[] x, double[] y) {
    double mx = mean(x);
    double my = mean(y);
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += (x[i] - mx) * (y[i] - my);
    }
    return sum;
  }

  /** Returns the standard deviation with n - 1. */
  static double sd(double[] x) {
    return Math.sqrt(cross(x, x) / (x.length - 1));
  }

  static double[] minus(double[] x, double[] y) {
    double[] d = new double[x.length];
    for (int i = 0; i < d.length; i++) {
      d[i] = x[i] - y[i];
    }
    return d;
  }

  /** Returns the array without its item {@code i}. */
  static double[] without(double[] x, int i) {
    double[] rest = new double[x.length - 1];
    System.arraycopy(x, 0, rest, 0, i);
    System.arraycopy(x, i + 1, rest, i, rest.length - i);
    return rest;
  }
}
