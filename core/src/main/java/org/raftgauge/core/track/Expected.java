// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/**
 * What a healthy plant of a cohort is expected to have.
 *
 * @param lnArea ln of the median area in cm2
 * @param standardError of that
 * @param rate growth rate, 1/day
 * @param basis what it rests on
 */
record Expected(double lnArea, double standardError, double rate, Basis basis) {}
