// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import boofcv.alg.geo.calibration.Zhang99DecomposeHomography;
import georegression.struct.se.Se3_F64;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.Distortion;

/** A first guess of where a target stood before a camera whose lens is known. */
final class StartPose {
  private static final double UNIT = 1000;

  private StartPose() {}

  /** Guesses; nothing where the points lie in line. */
  static Optional<ViewPose> of(Lens lens, List<TargetPoint> points) {
    List<TargetPoint> rays =
        points.stream()
            .map(
                p -> {
                  double[] ray = Distortion.toRay(lens, p.seen());
                  PointPx at = new PointPx(UNIT * ray[0], UNIT * ray[1]);
                  return new TargetPoint(p.number(), p.xMm(), p.yMm(), at);
                })
            .toList();
    return TargetMap.through(rays).map(TargetMap::matrix).map(StartPose::pose);
  }

  private static ViewPose pose(DMatrixRMaj map) {
    Zhang99DecomposeHomography decompose = new Zhang99DecomposeHomography();
    decompose.setCalibrationMatrix(new DMatrixRMaj(3, 3, true, UNIT, 0, 0, 0, UNIT, 0, 0, 0, 1));
    Se3_F64 pose = decompose.decompose(map);
    return new ViewPose(pose.R.data, new double[] {pose.T.x, pose.T.y, pose.T.z});
  }
}
