// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/**
 * An estimate with its 95 % interval.
 *
 * @param value the estimate
 * @param standardError its standard error, 0 or more
 * @param lo95 lower end
 * @param hi95 upper end
 */
public record Estimate(double value, double standardError, double lo95, double hi95) {
  static Estimate of(double value, double standardError, double quantile) {
    return new Estimate(
        value, standardError, value - quantile * standardError, value + quantile * standardError);
  }
}
