// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/** Boards of 600 x 1200 mm about a place, told by how far their middles lie from it. */
class MissingBoardTest {
  private static final Layout DECK = TestLayouts.deck18();
  private static final Lens LENS = TestPoses.lens(1500, 1500);
  private static final CameraPose OVER = TestPoses.over(LENS, DECK.board(), 1600, 20, 2, -1);
  private static final PointPx PLACE = OVER.toPhoto(BoardPlaces.centre(DECK.board()));

  @Test
  void nothingFoundLeavesRoom() {
    assertTrue(MissingBoard.mayCover(List.of(), PLACE));
  }

  @Test
  void aBoardOverThePlaceLeavesNone() {
    assertFalse(mayCover(new double[] {0, 0}));
    assertFalse(mayCover(new double[] {250, 550}));
  }

  @Test
  void aBoardBesideThePlaceLeavesTheOtherSide() {
    assertTrue(mayCover(new double[] {-310, 0}));
    assertTrue(mayCover(new double[] {0, 620}));
  }

  @Test
  void aGapBetweenBoardsLeavesNone() {
    assertFalse(mayCover(new double[] {-310, 0}, new double[] {310, 0}));
    double[][] four = {{-310, -610}, {310, -610}, {-310, 610}, {310, 610}};
    assertFalse(mayCover(four));
  }

  @Test
  void oneOfFourLeavesRoomWhereItIsMissing() {
    assertTrue(
        mayCover(new double[] {-310, -610}, new double[] {310, -610}, new double[] {-310, 610}));
  }

  @Test
  void neighboursOnEitherSideOfAMissingBoardLeaveRoom() {
    assertTrue(mayCover(new double[] {-610, 0}, new double[] {610, 0}));
  }

  private static boolean mayCover(double[]... middles) {
    return MissingBoard.mayCover(
        Stream.of(middles).map(m -> TestPoses.shifted(OVER, m[0], m[1])).map(m -> at(m)).toList(),
        PLACE);
  }

  private static FoundBoard at(CameraPose pose) {
    return new FoundBoard(
        Optional.empty(),
        Optional.empty(),
        DECK,
        pose,
        PoseSource.MARKERS,
        0.1,
        true,
        List.of(),
        "");
  }
}
