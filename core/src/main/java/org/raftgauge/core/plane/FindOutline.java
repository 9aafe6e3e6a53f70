// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.opencv.FindBlobs;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds boards without marks by their outline: a light or dark rectangle of a board's size at the
 * station's height, placed by its edges.
 */
final class FindOutline {
  /** A rectangle's sides may be off by that share: tilt, hanging leaves, height. */
  private static final double SIZE_FRACTION = 0.12;

  /** Reach of the edge search, as a share of the board's short side. */
  private static final double REACH_SHARE = 0.1;

  /**
   * Share of cuts that must show each of the four edges: with an edge missing, a shadow, gutter or
   * neighbour passes for it and the board slides by a hand's breadth.
   */
  private static final double LEAST_SHARE = 0.4;

  /** Reach about the station's usual place, as a share of the board's short side. */
  private static final double USUAL_REACH_SHARE = 0.15;

  private final RgbImage photo;
  private final FitPose.Prior prior;
  private final BoardEdges edges;

  /** A board found by its outline. */
  record Outlined(Layout layout, BoardEdges.Placed placed) {}

  FindOutline(RgbImage photo, FitPose.Prior prior) {
    this.photo = photo;
    this.prior = prior;
    this.edges = new BoardEdges(LinearLight.of(photo), prior);
  }

  /** Returns the plainest board of these layouts, or nothing. */
  Optional<Outlined> best(List<Layout> layouts) {
    List<Outlined> found = new ArrayList<>();
    for (List<PointPx> corners : FindBlobs.rectangles(photo)) {
      for (Layout layout : layouts) {
        place(corners, layout).ifPresent(found::add);
      }
    }
    for (Layout layout : layouts) {
      for (int quarter = 0; quarter < 2; quarter++) {
        CameraPose start = UsualPlace.pose(photo, prior, layout.board(), quarter);
        placed(start, layout, USUAL_REACH_SHARE).ifPresent(found::add);
      }
    }
    return found.stream()
        .filter(o -> o.placed().weakest() > LEAST_SHARE)
        .max(Comparator.comparingDouble(o -> o.placed().share()));
  }

  private Optional<Outlined> place(List<PointPx> corners, Layout layout) {
    for (int first = 0; first < 2; first++) {
      List<Tie> ties = ties(corners, first, layout.board());
      CameraPose start = FromAbove.of(prior.lens(), ties);
      if (fits(start, ties)) {
        return placed(start, layout, REACH_SHARE);
      }
    }
    return Optional.empty();
  }

  private Optional<Outlined> placed(CameraPose start, Layout layout, double reachShare) {
    double shortMm = Math.min(layout.board().widthMm(), layout.board().lengthMm());
    return edges
        .place(start, layout.board(), reachShare * shortMm, List.of())
        .map(p -> new Outlined(layout, p));
  }

  private static List<Tie> ties(List<PointPx> corners, int first, Board board) {
    List<PointMm> places = BoardPlaces.corners(board);
    List<Tie> ties = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      ties.add(new Tie(places.get(i), corners.get((i + first) % 4), 5));
    }
    return ties;
  }

  /** Says whether a rectangle has a board's shape and its size at the station's height. */
  private boolean fits(CameraPose start, List<Tie> ties) {
    double side = ties.get(0).photo().distancePx(ties.get(1).photo());
    double worst = ties.stream().mapToDouble(t -> t.missPx(start)).max().orElse(0);
    return Math.abs(start.heightMm() / prior.heightMm() - 1) < SIZE_FRACTION
        && worst < SIZE_FRACTION * side;
  }
}
