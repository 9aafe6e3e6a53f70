// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Comparator;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * Says whether a board that was not found may lie over a place of the photo: whether those found
 * leave room for it there.
 */
final class MissingBoard {
  /** Directions in which room is looked for. */
  private static final int DIRECTIONS = 32;

  /**
   * Directions side by side that must be free: near a corner of its own, where it covers least
   * around a place on it, a board still fills a quarter of them, the first or last but touched.
   */
  private static final int FREE = DIRECTIONS / 4 - 1;

  /** Room is looked for at this share of a board's shorter side; the whole would fit in as well. */
  private static final double REACH = 0.5;

  private MissingBoard() {}

  /**
   * Says whether one may lie there.
   *
   * @param found the boards found
   * @param place in the photo
   */
  static boolean mayCover(List<FoundBoard> found, PointPx place) {
    return found.stream()
        .min(Comparator.comparingDouble(b -> distanceMm(b, place)))
        .map(nearest -> room(found, nearest, place))
        .orElse(true);
  }

  private static boolean room(List<FoundBoard> found, FoundBoard nearest, PointPx place) {
    Board board = nearest.layout().board();
    PointMm middle = nearest.pose().toDeck(place);
    double reachMm = REACH * Math.min(board.widthMm(), board.lengthMm());
    int free = 0;
    // Once around and a little more: free directions may lie on both sides of the first.
    for (int i = 0; i < DIRECTIONS + FREE && free < FREE; i++) {
      double turn = 2 * Math.PI * i / DIRECTIONS;
      PointMm there =
          new PointMm(
              middle.xMm() + reachMm * Math.cos(turn), middle.yMm() + reachMm * Math.sin(turn));
      free = covered(found, nearest.pose().toPhoto(there)) ? 0 : free + 1;
    }
    return free >= FREE && !covered(found, place);
  }

  private static boolean covered(List<FoundBoard> found, PointPx place) {
    return found.stream().anyMatch(b -> covers(b.pose(), b.layout().board(), place));
  }

  /** Says whether a board covers a place of the photo. */
  static boolean covers(CameraPose pose, Board board, PointPx place) {
    PointMm p = pose.toDeck(place);
    return p.xMm() > 0 && p.yMm() > 0 && p.xMm() < board.widthMm() && p.yMm() < board.lengthMm();
  }

  private static double distanceMm(FoundBoard board, PointPx place) {
    PointMm p = board.pose().toDeck(place);
    PointMm centre = BoardPlaces.centre(board.layout().board());
    return Math.hypot(p.xMm() - centre.xMm(), p.yMm() - centre.yMm());
  }
}
