// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import boofcv.alg.geo.calibration.Zhang99CalibrationMatrixFromHomographies;
import boofcv.alg.geo.calibration.Zhang99DecomposeHomography;
import georegression.struct.se.Se3_F64;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.raftgauge.core.book.Lens;

/**
 * A first guess of lens and poses, from the plane-to-plane maps of the views.
 *
 * <p>Source: Zhang 2000, section 3.1, as in BoofCV 1.1.7; the principal point starts in the
 * picture's middle, since the closed form puts it badly.
 *
 * @param lens the lens, without distortion
 * @param poses one a view
 */
record StartLens(Lens lens, List<ViewPose> poses) {
  /** Where the closed form fails: a normal lens, focal length 1.2 times the longer side. */
  private static final double NORMAL_LENS = 1.2;

  /** Focal lengths outside of these multiples of the longer side are no camera over a board. */
  private static final double SHORTEST = 0.25;

  private static final double LONGEST = 20;

  /** Guesses; nothing where a view is degenerate. */
  static Optional<StartLens> of(List<TargetSighting> sightings) {
    List<DMatrixRMaj> maps = new ArrayList<>();
    for (TargetSighting s : sightings) {
      Optional<TargetMap> map = TargetMap.through(s.points());
      if (map.isEmpty()) {
        return Optional.empty();
      }
      maps.add(map.get().matrix());
    }
    double cx = (sightings.get(0).widthPx() - 1) / 2.0;
    double cy = (sightings.get(0).heightPx() - 1) / 2.0;
    double f = focalPx(maps, 2 * Math.max(cx, cy));
    Zhang99DecomposeHomography decompose = new Zhang99DecomposeHomography();
    decompose.setCalibrationMatrix(new DMatrixRMaj(3, 3, true, f, 0, cx, 0, f, cy, 0, 0, 1));
    List<ViewPose> poses = new ArrayList<>();
    for (DMatrixRMaj map : maps) {
      Se3_F64 pose = decompose.decompose(map);
      double[] t = {pose.T.x, pose.T.y, pose.T.z};
      poses.add(new ViewPose(pose.R.data, t));
    }
    return Optional.of(new StartLens(new Lens(f, f, cx, cy, 0, 0, 0, 0, 0), poses));
  }

  private static double focalPx(List<DMatrixRMaj> maps, double longerPx) {
    if (maps.size() >= 3) {
      try {
        Zhang99CalibrationMatrixFromHomographies zhang =
            new Zhang99CalibrationMatrixFromHomographies(true);
        zhang.process(maps);
        DMatrixRMaj k = zhang.getCalibrationMatrix();
        double f = (k.get(0, 0) + k.get(1, 1)) / 2;
        if (f > SHORTEST * longerPx && f < LONGEST * longerPx) {
          return f;
        }
      } catch (RuntimeException degenerate) {
        // All views alike: the closed form has no answer, the guess below starts the search.
        return NORMAL_LENS * longerPx;
      }
    }
    return NORMAL_LENS * longerPx;
  }
}
