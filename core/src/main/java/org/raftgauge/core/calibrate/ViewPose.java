// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
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

  /** Returns the pose that takes places in one pose's axes to another's. */
  static ViewPose between(ViewPose one, ViewPose other) {
    double[] back = transposed(one.r);
    double[] r = Rotations.times(other.r, back);
    double[] t = turned(r, one.t);
    return new ViewPose(r, new double[] {other.t[0] - t[0], other.t[1] - t[1], other.t[2] - t[2]});
  }

  /** Returns this pose followed by another. */
  ViewPose then(ViewPose next) {
    double[] at = turned(next.r, t);
    return new ViewPose(
        Rotations.times(next.r, r),
        new double[] {at[0] + next.t[0], at[1] + next.t[1], at[2] + next.t[2]});
  }

  /** Returns a direction in the axes that the pose comes from. */
  double[] back(double[] ray) {
    return turned(transposed(r), ray);
  }

  /** Returns the camera's place in the axes that the pose comes from, mm. */
  double[] eye() {
    double[] at = back(t);
    return new double[] {-at[0], -at[1], -at[2]};
  }

  /** Returns the shift, mm. */
  List<Double> shiftMm() {
    return List.of(t[0], t[1], t[2]);
  }

  /** Returns the turn as a vector, degrees, for turns under 180. */
  List<Double> turnDeg() {
    double x = r[7] - r[5];
    double y = r[2] - r[6];
    double z = r[3] - r[1];
    double sine = Math.sqrt(x * x + y * y + z * z) / 2;
    double angle = Math.atan2(sine, (r[0] + r[4] + r[8] - 1) / 2);
    double share = Math.toDegrees(sine < 1e-9 ? 0.5 : angle / (2 * sine));
    return List.of(x * share, y * share, z * share);
  }

  private static double[] transposed(double[] m) {
    return new double[] {m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]};
  }

  private static double[] turned(double[] m, double[] v) {
    return new double[] {
      m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
      m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
      m[6] * v[0] + m[7] * v[1] + m[8] * v[2]
    };
  }

  double tiltDeg() {
    return Math.toDegrees(Math.acos(Math.min(1, Math.abs(r[8]))));
  }

  double distanceMm() {
    return Math.sqrt(t[0] * t[0] + t[1] * t[1] + t[2] * t[2]);
  }
}
