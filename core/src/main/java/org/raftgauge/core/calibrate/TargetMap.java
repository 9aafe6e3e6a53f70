// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import boofcv.alg.geo.calibration.Zhang99ComputeTargetHomography;
import boofcv.struct.geo.PointIndex2D_F64;
import georegression.struct.point.Point2D_F64;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.raftgauge.core.pixels.PointPx;

/** The plane-to-plane map from a target to a photo, without the lens's distortion. */
final class TargetMap {
  private final DMatrixRMaj h;

  private TargetMap(DMatrixRMaj h) {
    this.h = h;
  }

  /** Returns the map through a target's points; nothing where there are too few. */
  static Optional<TargetMap> through(List<TargetPoint> points) {
    if (points.size() < 4) {
      return Optional.empty();
    }
    List<Point2D_F64> layout = new ArrayList<>();
    List<PointIndex2D_F64> seen = new ArrayList<>();
    for (TargetPoint p : points) {
      seen.add(new PointIndex2D_F64(p.seen().xPx(), p.seen().yPx(), layout.size()));
      layout.add(new Point2D_F64(p.xMm(), p.yMm()));
    }
    Zhang99ComputeTargetHomography compute = new Zhang99ComputeTargetHomography();
    compute.setTargetLayout(layout);
    return compute.computeHomography(seen)
        ? Optional.of(new TargetMap(compute.getCopyOfHomography()))
        : Optional.empty();
  }

  /** Returns a copy of the matrix. */
  DMatrixRMaj matrix() {
    return h.copy();
  }

  /** Returns the photo place of a place on the target. */
  PointPx toPhoto(double xMm, double yMm) {
    double w = h.get(2, 0) * xMm + h.get(2, 1) * yMm + h.get(2, 2);
    return new PointPx(
        (h.get(0, 0) * xMm + h.get(0, 1) * yMm + h.get(0, 2)) / w,
        (h.get(1, 0) * xMm + h.get(1, 1) * yMm + h.get(1, 2)) / w);
  }
}
