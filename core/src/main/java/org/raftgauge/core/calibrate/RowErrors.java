// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.plane.Distortion;

/**
 * How far a point's rows lie apart in both pictures of a rectified pair. Rectified: both pictures
 * turned so that their x axis runs along the baseline (Fusiello, Trucco and Verri 2000), at the
 * first camera's focal length.
 */
final class RowErrors {
  private final Lens first;
  private final Lens second;
  private final double[] y;
  private final double[] z;
  private final ViewPose between;
  private double squares;
  private double worst;
  private int n;

  RowErrors(Lens first, Lens second, ViewPose between) {
    this.first = first;
    this.second = second;
    this.between = between;
    double[] x = unit(between.eye());
    double along = x[2];
    this.z = unit(new double[] {-along * x[0], -along * x[1], 1 - along * x[2]});
    this.y = cross(z, x);
  }

  private static double[] unit(double[] v) {
    double length = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    return new double[] {v[0] / length, v[1] / length, v[2] / length};
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  /** Takes the points of one moment. */
  void take(List<TargetPoint> inFirst, List<TargetPoint> inSecond) {
    for (int i = 0; i < inFirst.size(); i++) {
      double[] a = Distortion.toRay(first, inFirst.get(i).seen());
      double[] b = Distortion.toRay(second, inSecond.get(i).seen());
      double apart =
          row(new double[] {a[0], a[1], 1}) - row(between.back(new double[] {b[0], b[1], 1}));
      squares += apart * apart;
      worst = Math.max(worst, Math.abs(apart));
      n++;
    }
  }

  private double row(double[] ray) {
    return first.fyPx() * dot(y, ray) / dot(z, ray);
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  double rmsPx() {
    return n == 0 ? 0 : Math.sqrt(squares / n);
  }

  double worstPx() {
    return worst;
  }
}
