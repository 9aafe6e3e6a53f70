// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import org.raftgauge.core.growth.GrowthCurve;

/**
 * What weather that carries over from day to day does to ln area, by covariance: on day d growth is
 * {@code r(d) (1 + x(d))} with r the curve's growth rate and x a first-order autoregression of
 * standard deviation 1. Between whole days is interpolated. Holds arrays; never changes.
 */
final class WeatherWalk {
  private final double[] rate;
  private final double stays;
  private final double[][] covariance;

  /**
   * Adds up.
   *
   * @param curve tells the growth rate
   * @param stays correlation of one day's weather with the next's, 0 to below 1
   * @param days from age 0
   */
  WeatherWalk(GrowthCurve curve, double stays, int days) {
    this.stays = stays;
    this.rate = new double[days + 1];
    for (int d = 1; d <= days; d++) {
      rate[d] = Math.max(0, curve.lnArea(d) - curve.lnArea(d - 1));
    }
    this.covariance = new double[days + 1][days + 1];
    double[] power = new double[days + 1];
    power[0] = 1;
    for (int d = 1; d <= days; d++) {
      power[d] = power[d - 1] * stays;
    }
    for (int i = 1; i <= days; i++) {
      double row = 0;
      for (int j = 1; j <= days; j++) {
        row += rate[i] * rate[j] * power[Math.abs(i - j)];
        covariance[i][j] = covariance[i - 1][j] + row;
      }
    }
  }

  /** Returns the covariance of the sums up to two ages. */
  double covariance(double a, double b) {
    int i = floor(a);
    int j = floor(b);
    double x = Math.min(1, a - i);
    double y = Math.min(1, b - j);
    return (1 - x) * ((1 - y) * covariance[i][j] + y * covariance[i][j + 1])
        + x * ((1 - y) * covariance[i + 1][j] + y * covariance[i + 1][j + 1]);
  }

  private int floor(double age) {
    return (int) Math.max(0, Math.min(rate.length - 2, Math.floor(age)));
  }

  /**
   * Returns the variance that weather still to come adds, the day's weather being known.
   *
   * @param from age, days
   * @param days after it
   */
  double ahead(double from, int days) {
    int first = floor(from);
    double sum = 0;
    for (int i = 1; i <= days; i++) {
      for (int j = 1; j <= days; j++) {
        double share = Math.pow(stays, Math.abs(i - j)) - Math.pow(stays, i + j);
        sum += rateAt(first + i) * rateAt(first + j) * share;
      }
    }
    return sum;
  }

  private double rateAt(int day) {
    return rate[Math.min(rate.length - 1, day)];
  }
}
