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
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** A board's edges that lie 40 mm beside their usual place, with its plants or without them. */
class TrustKnockTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Layout LAYOUT = TestLayouts.pond18();
  private static final Board BOARD = LAYOUT.board();
  private static final double ASIDE_MM = 40;
  private static final CameraPose USUAL = TestPoses.over(LENS, BOARD, 2200, 0, 0, 0);
  private static final CameraPose ASIDE = TestPoses.shifted(USUAL, ASIDE_MM, 0);

  private static RgbImage photo(double plantsAsideMm) {
    Scene scene = Scene.of(640, 480, 5);
    PaintedBoard board = scene.board(LAYOUT, ASIDE).light(0.6);
    for (SiteId site : LAYOUT.grid().sites()) {
      PointMm c = LAYOUT.grid().centre(site);
      board.disc(c.xMm() + plantsAsideMm, c.yMm(), 35);
    }
    return scene.draw();
  }

  /** Returns where a place of the board in its usual pose lies on it where it is aside, mm. */
  private static double backMm() {
    PointPx usual = USUAL.toPhoto(new PointMm(300, 600));
    PointPx plus = ASIDE.toPhoto(new PointMm(300 + ASIDE_MM, 600));
    return usual.distancePx(plus) < 2 ? ASIDE_MM : -ASIDE_MM;
  }

  @Test
  void edgesThatTheirPlantsGoAlongWithAreBelieved() {
    TrustKnock knock = TrustKnock.of(photo(0), List.of(USUAL), List.of(LAYOUT));
    double mmPerPx = USUAL.mmPerPxAt(new PointMm(300, 600));
    assertEquals("", knock.held());
    // Searched in steps of 2 px.
    assertEquals(ASIDE_MM, Math.hypot(knock.dxPx(), knock.dyPx()) * mmPerPx, 2 * mmPerPx);
  }

  @Test
  void edgesAreNotBelievedWhereHolesAndPlantsLieAsEver() {
    TrustKnock knock = TrustKnock.of(photo(backMm()), List.of(USUAL), List.of(LAYOUT));
    assertTrue(knock.held().isEmpty() && knock.dxPx() == 0 && knock.dyPx() == 0, knock.toString());
  }
}
