// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import org.raftgauge.core.leastsquares.Interval;

/** When a target size is reached, or why that cannot be said. */
public sealed interface TargetDay {
  /**
   * The day on which the curve reaches the target.
   *
   * @param dat the day by the curve, with its delta-method interval
   * @param profile 95 % interval by the profile likelihood, an end open where nothing bounds it
   */
  record ReachedOn(Estimate dat, Interval profile) implements TargetDay {}

  /**
   * The day cannot be told.
   *
   * @param reason why not, for a reader
   */
  record NotReached(String reason) implements TargetDay {}
}
