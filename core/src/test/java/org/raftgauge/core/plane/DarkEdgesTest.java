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
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** A dark board on dark water, its edges in view between large bright leaves only. */
class DarkEdgesTest {
  private static final Lens LENS = new Lens(1280, 1280, 640, 480, -0.1, 0.02, 0, 0, 0);
  private static final Layout LAYOUT = TestLayouts.pond18();
  private static final Board BOARD = LAYOUT.board();
  private static final double BESIDE_MM = 14;
  private static final CameraPose USUAL = TestPoses.over(LENS, BOARD, 2200, 0, 0, 0);
  private static final CameraPose NOW = TestPoses.shifted(USUAL, BESIDE_MM, 0);

  /** Board 0.042 of full light, water 0.03: 56 and 48 of 255. Leaves reach over the long edges. */
  private static RgbImage photo() {
    Scene scene = Scene.of(1280, 960, 7);
    PaintedBoard board = scene.board(LAYOUT, NOW).light(0.042);
    for (SiteId site : LAYOUT.grid().sites()) {
      PointMm c = LAYOUT.grid().centre(site);
      board.disc(c.xMm(), c.yMm() + 12 * (site.column() - 1), 110);
    }
    return scene.draw();
  }

  @Test
  void theyShowTheCamerasShift() {
    FindKnock find = new FindKnock(LinearLight.of(photo()), 1280, List.of(USUAL), List.of(BOARD));
    FindKnock.Knock knock = find.find().orElseThrow();
    PointMm middle = new PointMm(300, 600);
    PointPx was = USUAL.toPhoto(middle);
    PointPx is = NOW.toPhoto(middle);
    // Searched in steps of 4 px.
    assertEquals(is.xPx() - was.xPx(), knock.dxPx(), 4);
    assertEquals(is.yPx() - was.yPx(), knock.dyPx(), 4);
  }

  @Test
  void theyPlaceTheBoard() {
    BoardEdges.Placed placed =
        new BoardEdges(LinearLight.of(photo()), FitPose.Prior.of(LENS, 2200))
            .place(USUAL, BOARD, 30, List.of())
            .orElseThrow();
    double worst = TestPoses.worstMm(NOW, placed.fit().pose(), BOARD);
    assertTrue(worst < 2, "mm: " + worst);
  }
}
