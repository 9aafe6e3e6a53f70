// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

/**
 * A straight line with the errors of its two numbers.
 *
 * @param slope y per x
 * @param intercept y at x = 0
 * @param slopeSe standard error of the slope
 * @param interceptSe standard error of the intercept
 */
public record Line(double slope, double intercept, double slopeSe, double interceptSe) {}
