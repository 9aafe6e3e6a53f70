// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.RgbImage;

/** A near-black board on black water, drawn with known poses: only its plants show. */
class StillHolesTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Layout LAYOUT = TestLayouts.pond18();
  private static final Board BOARD = LAYOUT.board();

  @Test
  void plantsTellAStillCameraFromAMovedOne() {
    RgbImage photo = photo(true);
    for (double offMm : new double[] {0, 6}) {
      assertTrue(StillHoles.tell(photo, List.of(pose(offMm)), List.of(LAYOUT)), "off " + offMm);
    }
    for (double offMm : new double[] {25, 60, -60}) {
      assertEquals(false, StillHoles.tell(photo, List.of(pose(offMm)), List.of(LAYOUT)));
    }
  }

  @Test
  void theyTellHowFarABoardLiesFromWhereItIsThoughtToLie() {
    RgbImage photo = photo(true);
    // The grid of 2.5 mm cells and pixels of 3.4 mm tell a place to 3 mm.
    assertEquals(40, StillHoles.farOffMm(photo, pose(40), LAYOUT).orElseThrow(), 3);
    assertTrue(StillHoles.farOffMm(photo, pose(30), LAYOUT).isEmpty(), "plants lean by 36 mm");
    assertTrue(StillHoles.farOffMm(photo(false), pose(40), LAYOUT).isEmpty(), "nothing shows");
    for (double shiftMm : new double[] {29, 31, 89, 91}) { // twice 15 mm, and half of 180
      assertEquals(shiftMm > 30 && shiftMm < 90, StillHoles.show(shiftMm, LAYOUT), "" + shiftMm);
    }
  }

  @Test
  void outwardsFromTheCamerasFootHighPlantsLieAsideOfTheirHoles() {
    // A camera 500 mm beside the board's middle sees what stands 250 mm high 64 mm farther out.
    CameraPose beside = pose(500);
    double out = 300 > beside.foot().xMm() ? 1 : -1;
    assertTrue(StillHoles.farOffMm(photo(beside, 40 * out), beside, LAYOUT).isEmpty(), "outwards");
    assertEquals(
        40, StillHoles.farOffMm(photo(beside, -40 * out), beside, LAYOUT).orElseThrow(), 4);
  }

  @Test
  void aBoardOnWhichNothingShowsTellsNothing() {
    assertEquals(false, StillHoles.tell(photo(false), List.of(pose(0)), List.of(LAYOUT)));
  }

  @Test
  void oneOfThreeBoardsIsNotEnough() {
    List<CameraPose> poses = List.of(pose(0), pose(700), pose(-700));
    assertEquals(false, StillHoles.tell(photo(true), poses, List.of(LAYOUT, LAYOUT, LAYOUT)));
  }

  /** The camera as it is believed to hang, aside of the true one. */
  private static CameraPose pose(double offMm) {
    return TestPoses.shifted(TestPoses.over(LENS, BOARD, 2200, 0, 0, 0), offMm, 0);
  }

  private static RgbImage photo(boolean planted) {
    return planted ? photo(pose(0), 0) : scene(pose(0)).draw();
  }

  /** The board in a pose, its plants all so far aside of their sites. */
  private static RgbImage photo(CameraPose pose, double asideMm) {
    Scene scene = Scene.of(640, 480, 5);
    PaintedBoard board = scene.board(LAYOUT, pose).light(0.03);
    for (SiteId site : LAYOUT.grid().sites()) {
      PointMm c = LAYOUT.grid().centre(site);
      board.disc(c.xMm() + asideMm, c.yMm(), 35);
    }
    return scene.draw();
  }

  private static Scene scene(CameraPose pose) {
    Scene scene = Scene.of(640, 480, 5);
    scene.board(LAYOUT, pose).light(0.03);
    return scene;
  }
}
