// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * How a calibrated lens explains one photo.
 *
 * @param photo the photo's name
 * @param meanErrorPx mean distance between points as seen and as foretold, px
 * @param rmsErrorPx root mean square of that, px
 * @param tiltDeg angle between the target and the picture plane, degrees, 0 to 90
 * @param distanceMm from the camera to the target's middle, mm
 * @param misses each point
 */
public record ViewFit(
    String photo,
    double meanErrorPx,
    double rmsErrorPx,
    double tiltDeg,
    double distanceMm,
    List<Miss> misses) {

  /**
   * One point.
   *
   * @param seen where it was seen
   * @param foretold where the lens puts it
   */
  public record Miss(PointPx seen, PointPx foretold) {}

  /** Copies the points. */
  public ViewFit {
    misses = List.copyOf(misses);
  }
}
