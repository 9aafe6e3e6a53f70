// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.MarkerSighting;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.pixels.PointPx;

/**
 * A marker or tag seen, as a thing that has one place on a board.
 *
 * @param id marker id 0 to 3, or {@link #TAG}
 * @param text of the tag, where it is one with a usable text
 * @param cornersPx its corners, clockwise from its own top left
 * @param errorPx standard error of a corner, px
 */
record Mark(int id, Optional<String> text, List<PointPx> cornersPx, double errorPx) {
  /** The id that stands for a tag. */
  static final int TAG = 4;

  /** Tags are glued on by eye and last; a guess without a source. */
  private static final double TAG_PLACING_MM = 0.5;

  static Mark of(MarkerSighting marker) {
    return new Mark(marker.id(), Optional.empty(), marker.cornersPx(), marker.cornerErrorPx());
  }

  static Mark of(TagSighting tag) {
    return new Mark(
        TAG,
        tag.usable() ? Optional.of(tag.text()) : Optional.empty(),
        tag.cornersPx(),
        tag.cornerErrorPx());
  }

  boolean isTag() {
    return id == TAG;
  }

  /** Returns where its corners lie on a board, or nothing where the board has no such mark. */
  Optional<List<PointMm>> places(Layout layout) {
    return isTag()
        ? layout.tag().map(BoardPlaces::tag)
        : layout.markers().map(m -> BoardPlaces.marker(m, id));
  }

  /** Returns its corners tied to their places on a board that has such a mark. */
  List<Tie> ties(Layout layout) {
    List<PointMm> places = places(layout).orElseThrow();
    double placingPx = isTag() ? TAG_PLACING_MM * sidePx() / sideMm(layout) : 0;
    List<Tie> ties = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      // A tag's third corner has no finder pattern: its lines are carried on over two thirds.
      double seen = isTag() && i == 2 ? 3 * errorPx : errorPx;
      ties.add(new Tie(places.get(i), cornersPx.get(i), Math.hypot(seen, placingPx)));
    }
    return ties;
  }

  /** Returns how wide it is on a board that has such a mark, mm. */
  double sideMm(Layout layout) {
    List<PointMm> places = places(layout).orElseThrow();
    return places.get(1).xMm() - places.get(0).xMm();
  }

  PointPx centrePx() {
    double x = 0;
    double y = 0;
    for (PointPx p : cornersPx) {
      x += p.xPx() / 4;
      y += p.yPx() / 4;
    }
    return new PointPx(x, y);
  }

  double sidePx() {
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      sum += cornersPx.get(i).distancePx(cornersPx.get((i + 1) % 4));
    }
    return sum / 4;
  }

  /** Names it with its place in the photo, for people. */
  String named() {
    String what = isTag() ? "tag" + text.map(t -> " \"" + t + "\"").orElse("") : "marker " + id;
    return String.format(
        Locale.ROOT, "%s at (%.0f, %.0f) px", what, centrePx().xPx(), centrePx().yPx());
  }
}
