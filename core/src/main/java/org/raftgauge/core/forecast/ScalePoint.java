// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

/**
 * The size of a cycle's plants once closed, as the scale tells it: the ln area at which the
 * grader's line gives their weight, with what is each plant's own taken off.
 *
 * @param age days
 * @param lnArea up to the same constant as the cycle's {@link CommonPath}
 * @param variance of it by few plants and the tally; what the line is off by is not in it
 */
record ScalePoint(double age, double lnArea, double variance) {}
