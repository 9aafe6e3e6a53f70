// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

/**
 * How far a grader misses weighings that it was not fitted on: each left out in turn, the numbers
 * of the chosen model found again from the others.
 *
 * @param meanShare mean of |predicted - weighed| / weighed, by the predicted median
 * @param medianShare median of the same
 * @param sdLn root mean square error of {@code ln w}
 */
public record LeftOut(double meanShare, double medianShare, double sdLn) {
  /** A mean error past which weights tell nothing: half the plant; a working value. */
  private static final double TELLS_NOTHING = 0.5;

  /** Says whether it misses by so much that its weights are of no use. */
  public boolean tellsNothing() {
    return meanShare > TELLS_NOTHING;
  }
}
