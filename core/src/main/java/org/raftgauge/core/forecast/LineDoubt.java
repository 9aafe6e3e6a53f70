// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

/**
 * What the grader's line may be off by for closed plants, of ln area: its level, which no photo
 * shows, its slope, and what seasons differ by in weight per area. Working values; the first two
 * are wide, so that weighed cycles find them.
 */
final class LineDoubt {
  private static final double LEVEL_SD = 0.3;

  /** As a share. */
  private static final double SLOPE_SD = 0.12;

  private static final double CYCLE_SD = 0.03;

  private LineDoubt() {}

  /**
   * Returns the covariance of two sizes told by weight.
   *
   * @param sizes product of both, of ln area over the middle of all that were weighed
   * @param sameCycle whether both are of one cycle
   */
  static double covariance(double sizes, boolean sameCycle) {
    double all = LEVEL_SD * LEVEL_SD + SLOPE_SD * SLOPE_SD * sizes;
    return sameCycle ? all + CYCLE_SD * CYCLE_SD : all;
  }
}
