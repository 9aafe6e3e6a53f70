// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** Sample quantiles. */
final class Quantile {

  private Quantile() {}

  /**
   * Returns the value at a share of the sorted sample (nearest rank); the sample is not empty and
   * is not changed.
   */
  static double of(double[] sample, double share) {
    return Rank.of(sample.clone(), sample.length, (int) Math.round(share * (sample.length - 1)));
  }
}
