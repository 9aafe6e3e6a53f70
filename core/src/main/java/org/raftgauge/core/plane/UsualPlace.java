// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Where a passing raft is usually put: centred in the picture, long side along long side. */
final class UsualPlace {

  private UsualPlace() {}

  /** Returns the pose straight above a board centred in the picture, more quarter turns on. */
  static CameraPose pose(RgbImage photo, FitPose.Prior prior, Board board, int quarterTurns) {
    PointPx middle = new PointPx((photo.width() - 1) / 2.0, (photo.height() - 1) / 2.0);
    boolean along = (board.lengthMm() > board.widthMm()) == (photo.height() > photo.width());
    double angle = (quarterTurns + (along ? 0 : 1)) * Math.PI / 2;
    double[] turn = Rotations.about(0, 0, angle);
    double[] ray = Distortion.toRay(prior.lens(), middle);
    PointMm centre = BoardPlaces.centre(board);
    double z = prior.heightMm();
    double[] t = {
      ray[0] * z - (turn[0] * centre.xMm() + turn[1] * centre.yMm()),
      ray[1] * z - (turn[3] * centre.xMm() + turn[4] * centre.yMm()),
      z
    };
    return CameraPose.of(prior.lens(), turn, t);
  }
}
