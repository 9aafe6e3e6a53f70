// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.OrientationMark;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.pixels.PointPx;

/** Three boards under a fixed camera, each with a dark mark beside its A1 corner. */
class MirroredSlotsTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Board BOARD = new Board(600, 1200);
  private static final OrientationMark MARK =
      new OrientationMark(120, 60, 50, OrientationMark.Look.DARK);

  @Test
  void aMirroredPictureIsHeldAndSaidNotMeasuredInWrongSlots() {
    // A mirror keeps the distance from the end and swaps left and right, or the other way about.
    for (double[] seen : new double[][] {{480, 60}, {120, 1140}}) {
      for (FoundBoard board : boards(seen, seen, seen)) {
        assertEquals(VetSlots.MIRRORED, board.held());
      }
    }
  }

  @Test
  void aMarkHiddenOnOneBoardWithDirtInItsMirrorPlaceHoldsNothing() {
    double[] right = {120, 60};
    for (FoundBoard board : boards(right, new double[] {480, 60}, right)) {
      assertEquals("", board.held());
    }
  }

  private static List<FoundBoard> boards(double[]... marks) {
    Layout layout =
        new Layout(
            "pond-12",
            Optional.empty(),
            BOARD,
            new SiteGrid(6, 2, 150, 150, 300, 180, 0),
            Optional.empty(),
            Optional.empty(),
            Optional.of(MARK));
    CameraPose middle = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5);
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      CameraPose pose = TestPoses.shifted(middle, (i - 1) * 640.0, 0);
      scene.board(layout, pose).darkDisc(marks[i][0], marks[i][1], 25);
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
      slots.add(new Slot("S" + i, "pond-12", corners, Slot.Refine.EDGES));
    }
    Station station =
        new Station("pond", Station.Kind.FIXED, 1, 640, 480, LENS, 2200, slots, Duration.ZERO);
    return FindBoards.inSlots(scene.draw(), station, Map.of("pond-12", layout)).boards();
  }
}
