// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Poses over boards from the corners in the station file. */
final class SlotCorners {
  /** A corner clicked in the reference photo is good to about that, px of a 1000 px picture. */
  private static final double CORNER_SHARE = 0.001;

  private final double scale;
  private final double errorPx;
  private final FitPose.Prior prior;

  /** Takes the photo's size over that of the station's photos. */
  SlotCorners(double scale, RgbImage photo, FitPose.Prior prior) {
    this.scale = scale;
    this.errorPx = Math.max(0.5, CORNER_SHARE * Math.max(photo.width(), photo.height()));
    this.prior = prior;
  }

  /** Returns the pose over a slot's board. */
  PoseFit fit(Slot slot, Board board) {
    List<PointMm> places = BoardPlaces.corners(board);
    List<Tie> ties = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      PointPx c = slot.cornersPx().get(i);
      PointPx scaled = new PointPx((c.xPx() + 0.5) * scale - 0.5, (c.yPx() + 0.5) * scale - 0.5);
      ties.add(new Tie(places.get(i), scaled, errorPx));
    }
    CameraPose start = FromAbove.of(prior.lens(), ties);
    return FitPose.fit(start, ties.stream().map(FitPose::pull).toList(), prior);
  }

  /** Returns the farthest that a found pose puts a board's corner from the expected place, mm. */
  static double farthestMm(CameraPose expected, CameraPose found, Board board) {
    return BoardPlaces.corners(board).stream()
        .mapToDouble(
            c -> {
              PointMm p = expected.toDeck(found.toPhoto(c));
              return Math.hypot(p.xMm() - c.xMm(), p.yMm() - c.yMm());
            })
        .max()
        .orElse(0);
  }
}
