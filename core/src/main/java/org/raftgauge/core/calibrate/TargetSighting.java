// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What one photo shows of a target.
 *
 * @param photo the photo's name
 * @param widthPx width of the photo, px
 * @param heightPx height of the photo, px
 * @param points the target's points that were seen; none where it was not found
 * @param blurPx standard deviation of the blur of the target's edges, px, where it could be told
 */
public record TargetSighting(
    String photo, int widthPx, int heightPx, List<TargetPoint> points, OptionalDouble blurPx) {

  /** Copies the points. */
  public TargetSighting {
    points = List.copyOf(points);
  }

  /** Says whether the target was found. */
  public boolean found() {
    return !points.isEmpty();
  }
}
