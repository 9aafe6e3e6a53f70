// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.marker.FindMarkers;
import org.raftgauge.core.marker.MarkerSighting;
import org.raftgauge.core.pixels.RgbImage;

/** Leaves that touch the corner markers of a drawn board, 0.72 mm a pixel; exact by projection. */
class MarkersBesideLeafTest {
  private static final int WIDTH = 1200;
  private static final int HEIGHT = 2000;
  private static final Layout DECK = TestLayouts.deck18();
  private static final Lens LENS = TestPoses.lens(WIDTH, HEIGHT);
  private static final CameraPose TRUTH = TestPoses.over(LENS, DECK.board(), 1610, 3, 2, -1.5);

  @Test
  void markersThatLeavesReachIntoAreFoundAmongWhatIsBlack() {
    RgbImage photo = touched();
    List<Integer> alone = ids(FindMarkers.in(photo));
    List<Integer> beside = ids(FindMarkers.besideLeaf(photo));
    assertTrue(beside.stream().anyMatch(id -> !alone.contains(id)), beside + " over " + alone);
    FoundBoards found =
        FindBoards.passing(
            photo, TestLayouts.passing(WIDTH, HEIGHT, LENS), TestLayouts.onlyDeck18());
    assertEquals(1, found.boards().size(), found.toString());
    FoundBoard board = found.boards().get(0);
    assertEquals(PoseSource.MARKERS, board.source());
    assertEquals("", board.held());
    double worst = TestPoses.worstMm(TRUTH, board.pose(), DECK.board());
    // A fifth of a pixel, with an edge of each marker partly covered.
    assertTrue(worst < 0.3, worst + " mm");
  }

  private static List<Integer> ids(List<MarkerSighting> markers) {
    return markers.stream().map(MarkerSighting::id).toList();
  }

  /** The tips of leaves of 40 mm reach 4 mm into the inner edge of each marker. */
  private static RgbImage touched() {
    Scene scene = Scene.of(WIDTH, HEIGHT, 21);
    PaintedBoard board = scene.board(DECK, TRUTH);
    for (double y : new double[] {30, 1170}) {
      board.disc(56, y, 12).disc(95, y, 40).disc(544, y, 12).disc(505, y, 40);
    }
    return scene.draw();
  }
}
