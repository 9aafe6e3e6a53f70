// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.pixels.PointPx;

/** Bluish boards on water of their own brightness: only their colour shows where they end. */
class ColouredEdgesTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Layout LAYOUT = TestLayouts.pond18();
  private static final Board BOARD = LAYOUT.board();
  private static final double WATER = 0.05;

  /** Rec. 709 luminance of this is 1: 0.2126 x 0.76 + 0.7152 x 0.94 + 0.0722 x 2.3 = 1.00. */
  private static final double[] BLUISH = {0.76, 0.94, 2.3};

  @Test
  void boardsThatDifferFromTheWaterInBlueAloneArePlaced() {
    CameraPose usual = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5).water(WATER).noise(1);
    List<Slot> slots = new ArrayList<>();
    List<CameraPose> poses = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      CameraPose slot = TestPoses.shifted(usual, (i - 1) * 660.0, 0);
      // The board has drifted 9 mm in its slot.
      CameraPose drifted = TestPoses.shifted(usual, (i - 1) * 660.0 + 9, 0);
      PaintedBoard board =
          scene.board(LAYOUT, drifted).light(WATER).tint(BLUISH[0], BLUISH[1], BLUISH[2]);
      for (SiteId site : LAYOUT.grid().sites()) {
        PointMm c = LAYOUT.grid().centre(site);
        board.disc(c.xMm(), c.yMm(), 25);
      }
      poses.add(drifted);
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(slot::toPhoto).toList();
      slots.add(new Slot("S" + i, LAYOUT.name(), corners, Slot.Refine.EDGES));
    }
    Station station =
        new Station("pond", Station.Kind.FIXED, 1, 640, 480, LENS, 2200, slots, Duration.ZERO);

    List<FoundBoard> boards =
        FindBoards.inSlots(scene.draw(), station, Map.of(LAYOUT.name(), LAYOUT)).boards();

    for (int i = 0; i < 3; i++) {
      assertEquals("", boards.get(i).held());
      double offMm = SlotCorners.farthestMm(poses.get(i), boards.get(i).pose(), BOARD);
      assertTrue(offMm < 4, offMm + " mm, where a pixel is 3.4 mm wide");
    }
  }
}
