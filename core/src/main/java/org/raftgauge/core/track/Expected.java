// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.OptionalDouble;

/**
 * What a healthy plant of a cohort is expected to have.
 *
 * @param lnArea ln of the median area in cm2
 * @param standardError of that
 * @param rate growth rate, 1/day
 * @param basis what it rests on
 * @param shift by how much it departs from the past cycles or the crop's curve, ln(area); absent
 *     where there are none
 */
record Expected(
    double lnArea, double standardError, double rate, Basis basis, OptionalDouble shift) {}
