// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

/**
 * An exponentially weighted moving average chart.
 *
 * <p>{@code e_i = w x_i + (1 - w) e_(i-1)}, limits {@code target +- L sigma sqrt(w/(2-w) [1 -
 * (1-w)^(2i)])}.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4.
 *
 * @param weight weight of the newest value, above 0 to 1
 * @param widthSigmas L, half width of the limits in standard deviations of the average, above 0
 */
public record EwmaRule(double weight, double widthSigmas) {
  /** Checks the ranges. */
  public EwmaRule {
    if (!(weight > 0 && weight <= 1)) {
      throw new IllegalArgumentException("weight must be in (0, 1], got " + weight);
    }
    if (!(widthSigmas > 0)) {
      throw new IllegalArgumentException("widthSigmas must be > 0, got " + widthSigmas);
    }
  }

  /** Returns the state before the first value: at the target, no values. */
  public Ewma start(double target) {
    return new Ewma(this, target, target, 0);
  }

  /** Returns the weighted average after one more value. */
  public double next(double average, double x) {
    return weight * x + (1 - weight) * average;
  }

  /** Returns the half width of the limits after {@code n} values of standard deviation sigma. */
  public double halfWidth(int n, double sigma) {
    double share = weight / (2 - weight) * (1 - Math.pow(1 - weight, 2.0 * n));
    return widthSigmas * sigma * Math.sqrt(share);
  }
}
