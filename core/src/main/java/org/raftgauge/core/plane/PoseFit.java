// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import org.hipparchus.linear.RealMatrix;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * A fitted pose with the covariance of its six steps (turn, rad; shift, mm; see {@link
 * FitPose#moved}).
 *
 * @param pose the pose
 * @param covariance for the foretold errors
 * @param varianceFactor how much larger the errors seen are, as a variance
 */
record PoseFit(CameraPose pose, RealMatrix covariance, double varianceFactor) {
  private static final double[] STEP = {1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3};

  /**
   * Returns the standard error of a place on the deck that is read from the photo: root mean square
   * over the board's corners of the distance between read and true place, mm.
   */
  double errorMm(Board board) {
    double sum = 0;
    List<PointMm> corners = BoardPlaces.corners(board);
    for (PointMm corner : corners) {
      sum += varianceMm2(corner) / corners.size();
    }
    return Math.sqrt(varianceFactor * sum);
  }

  /** Returns the sum of the variances along x and y of a deck place, mm2. */
  private double varianceMm2(PointMm corner) {
    PointPx seen = pose.toPhoto(corner);
    double[] gx = new double[6];
    double[] gy = new double[6];
    for (int c = 0; c < 6; c++) {
      double[] step = new double[6];
      step[c] = STEP[c];
      PointMm up = FitPose.moved(pose, step).toDeck(seen);
      step[c] = -STEP[c];
      PointMm down = FitPose.moved(pose, step).toDeck(seen);
      gx[c] = (up.xMm() - down.xMm()) / (2 * STEP[c]);
      gy[c] = (up.yMm() - down.yMm()) / (2 * STEP[c]);
    }
    return quadratic(gx) + quadratic(gy);
  }

  private double quadratic(double[] g) {
    double[] cg = covariance.operate(g);
    double sum = 0;
    for (int i = 0; i < 6; i++) {
      sum += g[i] * cg[i];
    }
    return Math.max(0, sum);
  }
}
