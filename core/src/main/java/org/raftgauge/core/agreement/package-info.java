// SPDX-License-Identifier: Apache-2.0
/**
 * How far two ways of measuring the same things agree, and straight lines through numbers: least
 * squares with covariance ({@link org.raftgauge.core.agreement.LinearFit}), limits of agreement,
 * lines with error in both variables (Deming, York, Passing-Bablok), Lin's concordance, Grubbs'
 * outlier test, robust scale, CUSUM. Plain arrays in, records out; knows nothing of plants. Least
 * squares and distributions are Hipparchus's; the rest is written after the papers that each class
 * names.
 */
package org.raftgauge.core.agreement;
