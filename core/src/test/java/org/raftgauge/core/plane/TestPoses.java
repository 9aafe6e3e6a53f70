// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/** Lenses and poses for tests. */
final class TestPoses {

  private TestPoses() {}

  /** A lens whose picture of that width spans 1.35 m at 1.6 m. */
  static Lens lens(int width, int height) {
    double f = Math.max(width, height) * 1600 / 1450.0;
    return new Lens(f, f, width / 2.0 + 3, height / 2.0 - 5, -0.1, 0.02, 0.0003, -0.0002, 0);
  }

  /**
   * A pose with the board's middle at the picture's middle, turned, tilted.
   *
   * @param angles turn of the board in the picture, tilt about x, tilt about y; degrees
   */
  static CameraPose over(Lens lens, Board board, double heightMm, double... angles) {
    double[] turn =
        Rotations.times(
            Rotations.about(Math.toRadians(angles[1]), Math.toRadians(angles[2]), 0),
            Rotations.about(0, 0, Math.toRadians(angles[0])));
    double x = board.widthMm() / 2;
    double y = board.lengthMm() / 2;
    double z = heightMm;
    double[] t = {
      -(turn[0] * x + turn[1] * y), -(turn[3] * x + turn[4] * y), z - (turn[6] * x + turn[7] * y)
    };
    CameraPose pose = CameraPose.of(lens, turn, t);
    // Keep the camera at the height asked for.
    t[2] += (heightMm - pose.heightMm()) / turn[8];
    return CameraPose.of(lens, turn, t);
  }

  /** The same pose over a board that lies shifted in this board's frame. */
  static CameraPose shifted(CameraPose pose, double dxMm, double dyMm) {
    double[] r = pose.rotation();
    double[] t = pose.translationMm();
    for (int i = 0; i < 3; i++) {
      t[i] += r[3 * i] * dxMm + r[3 * i + 1] * dyMm;
    }
    return CameraPose.of(pose.lens(), r, t);
  }

  /** The farthest that a found pose misreads a board's corner, mm. */
  static double worstMm(CameraPose truth, CameraPose found, Board board) {
    double worst = 0;
    for (PointMm c : BoardPlaces.corners(board)) {
      PointMm d = found.toDeck(truth.toPhoto(c));
      worst = Math.max(worst, Math.hypot(d.xMm() - c.xMm(), d.yMm() - c.yMm()));
    }
    return worst;
  }

  /** Root mean square misreading over the corners, mm. */
  static double rmsMm(CameraPose truth, CameraPose found, Board board) {
    double sum = 0;
    for (PointMm c : BoardPlaces.corners(board)) {
      PointMm d = found.toDeck(truth.toPhoto(c));
      sum += Math.pow(d.xMm() - c.xMm(), 2) + Math.pow(d.yMm() - c.yMm(), 2);
    }
    return Math.sqrt(sum / 4);
  }

  /** A place in the photo, moved. */
  static PointPx moved(PointPx p, double dx, double dy) {
    return new PointPx(p.xPx() + dx, p.yPx() + dy);
  }
}
