// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** Sample quantiles. */
final class Quantile {

  private Quantile() {}

  /**
   * Returns the value at a share of the sorted sample (nearest rank); the sample is not empty and
   * is not changed.
   */
  static double of(double[] sample, double share) {
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }
}
