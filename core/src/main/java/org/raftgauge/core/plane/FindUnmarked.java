// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Finds a passing raft without marks: by outline, else the station's usual place, held. */
final class FindUnmarked {
  private final RgbImage photo;
  private final FitPose.Prior prior;
  private final KnownLayouts layouts;

  FindUnmarked(RgbImage photo, FitPose.Prior prior, KnownLayouts layouts) {
    this.photo = photo;
    this.prior = prior;
    this.layouts = layouts;
  }

  /**
   * Finds one more board: by an outline that lies on none of the others, else, where there are no
   * others, at the station's usual place.
   */
  Optional<FoundBoard> beside(List<FoundBoard> others) {
    Optional<FoundBoard> outlined =
        new FindOutline(photo, prior)
            .best(layouts.untagged())
            .map(this::outlined)
            .filter(b -> others.stream().noneMatch(o -> overlap(o, b)));
    if (outlined.isPresent() || !others.isEmpty()) {
      return outlined;
    }
    return layouts.untagged().stream().findFirst().map(this::usualPlace);
  }

  private static boolean overlap(FoundBoard a, FoundBoard b) {
    return coversMiddleOf(a, b) || coversMiddleOf(b, a);
  }

  private static boolean coversMiddleOf(FoundBoard a, FoundBoard b) {
    PointPx middle = b.pose().toPhoto(BoardPlaces.centre(b.layout().board()));
    return MissingBoard.covers(a.pose(), a.layout().board(), middle);
  }

  private FoundBoard outlined(FindOutline.Outlined outlined) {
    Layout layout = outlined.layout();
    PoseFit fit = outlined.placed().fit();
    HalfTurn turn = HalfTurn.of(LinearLight.of(photo), fit.pose(), layout);
    List<String> notes = new ArrayList<>();
    notes.add("no marker or tag: placed by " + outlined.placed().edgesSeen() + " board edges");
    turn.note().ifPresent(notes::add);
    boolean known = turn.known() && layout.orientationMark().isPresent();
    return new FoundBoard(
        Optional.empty(),
        Optional.empty(),
        layout,
        turn.pose(),
        PoseSource.OUTLINE,
        fit.errorMm(layout.board()),
        known,
        notes,
        known || HalfTurn.sameAfterHalfTurn(layout)
            ? layouts.rivals(layout, l -> l.board().equals(layout.board()))
            : "no marker, tag or mark tells which end of the board is which");
  }

  /** Returns the board as if centred in the picture, held. */
  private FoundBoard usualPlace(Layout layout) {
    Board board = layout.board();
    return new FoundBoard(
        Optional.empty(),
        Optional.empty(),
        layout,
        UsualPlace.pose(photo, prior, board, 0),
        PoseSource.STATION,
        // Anywhere in a third of the board's own size.
        Math.max(board.widthMm(), board.lengthMm()) / 3,
        false,
        List.of(),
        "no marker, no tag and no board outline found; check light, focus and markers");
  }
}
