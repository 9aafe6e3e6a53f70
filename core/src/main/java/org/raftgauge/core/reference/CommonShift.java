// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.Arrays;
import java.util.Optional;

/**
 * What plants have in common against a reference.
 *
 * @param lnShift median difference of ln area
 * @param error its standard error
 * @param plants how many plants it rests on
 */
public record CommonShift(double lnShift, double error, int plants) {
  /** Standard error of a median over that of a mean, for normal values: sqrt(pi / 2). */
  private static final double MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

  private static final double SD_PER_MAD = 1.482602218505602;

  static Optional<CommonShift> of(double[] off) {
    if (off.length < 3) {
      return Optional.empty();
    }
    double shift = Points.median(off);
    double mad = Points.median(Arrays.stream(off).map(v -> Math.abs(v - shift)).toArray());
    double error = MEDIAN_OVER_MEAN * SD_PER_MAD * mad / Math.sqrt(off.length);
    return Optional.of(new CommonShift(shift, error, off.length));
  }
}
