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

/** Three slots under a fixed camera, of which the middle one has lost its board or shows little. */
class EmptySlotTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Layout LAYOUT = TestLayouts.pond18();
  private static final Board BOARD = LAYOUT.board();
  private static final double WATER = 0.03;

  /** What lies in the middle slot. */
  private interface Middle {
    void on(Scene scene, CameraPose pose);
  }

  private static FoundBoard middle(Middle what) {
    CameraPose usual = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5).water(WATER);
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      CameraPose pose = TestPoses.shifted(usual, (i - 1) * 660.0, 0);
      if (i == 1) {
        what.on(scene, pose);
      } else {
        scene.board(LAYOUT, pose);
      }
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
      slots.add(new Slot("S" + i, LAYOUT.name(), corners, Slot.Refine.EDGES));
    }
    Station station =
        new Station("pond", Station.Kind.FIXED, 1, 640, 480, LENS, 2200, slots, Duration.ZERO);
    return FindBoards.inSlots(scene.draw(), station, Map.of(LAYOUT.name(), LAYOUT)).boards().get(1);
  }

  @Test
  void aSlotOfWaterIsHeldAndItsPlantsAreNotCalledDead() {
    String held = middle((scene, pose) -> {}).held();
    assertTrue(held.startsWith("no board shows in slot S1, neither edges nor plants"), held);
  }

  @Test
  void plantsVouchForABoardAsDarkAsItsWater() {
    FoundBoard board =
        middle(
            (scene, pose) -> {
              PaintedBoard painted = scene.board(LAYOUT, pose).light(WATER);
              for (SiteId site : LAYOUT.grid().sites()) {
                PointMm c = LAYOUT.grid().centre(site);
                painted.disc(c.xMm(), c.yMm(), 35);
              }
            });
    assertEquals("", board.held());
    assertTrue(board.poseErrorMm() >= 8, "" + board.poseErrorMm());
  }
}
