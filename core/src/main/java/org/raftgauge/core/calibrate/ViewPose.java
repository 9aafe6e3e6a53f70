// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.Distortion;
import org.raftgauge.core.plane.Rotations;

/** Where a target stood before the camera: {@code X = R (x, y, 0) + t}, mm. */
final class ViewPose {
  /** Nearer points than this are taken to be that far off, mm: a search may pass there. */
  private static final double NEAREST_MM = 1e-3;

  private final double[] r;
  private final double[] t;

  ViewPose(double[] rotation, double[] translationMm) {
    this.r = rotation.clone();
    this.t = translationMm.clone();
  }

  /** Returns the pose after a small turn (three radians) and shift (three mm). */
  ViewPose moved(double[] values, int from) {
    double[] turn = Rotations.about(values[from], values[from + 1], values[from + 2]);
    double[] shift = {t[0] + values[from + 3], t[1] + values[from + 4], t[2] + values[from + 5]};
    return new ViewPose(Rotations.times(turn, r), shift);
  }

  PointPx toPhoto(Lens lens, TargetPoint p) {
    double depth = Math.max(NEAREST_MM, r[6] * p.xMm() + r[7] * p.yMm() + t[2]);
    return Distortion.toPhoto(
        lens,
        (r[0] * p.xMm() + r[1] * p.yMm() + t[0]) / depth,
        (r[3] * p.xMm() + r[4] * p.yMm() + t[1]) / depth);
  }

  double tiltDeg() {
    return Math.toDegrees(Math.acos(Math.min(1, Math.abs(r[8]))));
  }

  double distanceMm() {
    return Math.sqrt(t[0] * t[0] + t[1] * t[1] + t[2] * t[2]);
  }
}
