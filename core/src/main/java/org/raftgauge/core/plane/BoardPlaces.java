// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.TagPlace;

/** Says where a layout's marks lie on the deck. */
final class BoardPlaces {

  private BoardPlaces() {}

  /** Returns the board's corners, clockwise from the origin. */
  static List<PointMm> corners(Board board) {
    return List.of(
        new PointMm(0, 0),
        new PointMm(board.widthMm(), 0),
        new PointMm(board.widthMm(), board.lengthMm()),
        new PointMm(0, board.lengthMm()));
  }

  /** Returns the middle of the board. */
  static PointMm centre(Board board) {
    return new PointMm(board.widthMm() / 2, board.lengthMm() / 2);
  }

  /** Returns the corners of a marker's black square, clockwise from its own top left. */
  static List<PointMm> marker(CornerMarkers markers, int id) {
    return square(markers.centresMm().get(id), markers.sideMm());
  }

  /** Returns the corners of the tag's code, clockwise from its own top left. */
  static List<PointMm> tag(TagPlace tag) {
    return square(new PointMm(tag.xMm(), tag.yMm()), tag.sideMm());
  }

  private static List<PointMm> square(PointMm centre, double sideMm) {
    double h = sideMm / 2;
    return List.of(
        new PointMm(centre.xMm() - h, centre.yMm() - h),
        new PointMm(centre.xMm() + h, centre.yMm() - h),
        new PointMm(centre.xMm() + h, centre.yMm() + h),
        new PointMm(centre.xMm() - h, centre.yMm() + h));
  }
}
