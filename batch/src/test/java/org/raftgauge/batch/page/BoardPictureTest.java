// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

class BoardPictureTest {
  private static final int RED = 0xff0000;
  private static final int BLUE = 0x0000ff;

  @Test
  void theUnitSquaresCornersFallOnTheQuadrilaterals() {
    List<PointPx> corners =
        List.of(new PointPx(3, 4), new PointPx(40, 9), new PointPx(35, 50), new PointPx(1, 44));
    ToQuad map = ToQuad.of(corners);
    near(corners.get(0), map.at(0, 0));
    near(corners.get(1), map.at(1, 0));
    near(corners.get(2), map.at(1, 1));
    near(corners.get(3), map.at(0, 1));
  }

  @Test
  void straightLinesStayStraight() {
    ToQuad map =
        ToQuad.of(
            List.of(new PointPx(0, 0), new PointPx(10, 2), new PointPx(9, 12), new PointPx(-1, 8)));
    // The middle of the square lies where the quadrilateral's diagonals cross: of (0,0)-(9,12) and
    // (10,2)-(-1,8): 9 s = 10 - 11 t and 12 s = 2 + 6 t give s = 82/186 = 0.44086.
    near(new PointPx(9 * 0.440860, 12 * 0.440860), map.at(0.5, 0.5));
  }

  @Test
  void aBoardThatLiesUpsideDownIsDrawnUpright() {
    // Upper half red, lower half blue; the origin corner is at the lower right.
    RgbImage photo = halves(40, 60);
    BufferedImage board = draw(photo, corner(40, 60), corner(0, 60), corner(0, 0), corner(40, 0));
    assertEquals(40, board.getWidth());
    assertEquals(60, board.getHeight());
    assertEquals(BLUE, board.getRGB(20, 5) & 0xffffff);
    assertEquals(RED, board.getRGB(20, 55) & 0xffffff);
  }

  @Test
  void aBoardThatLiesOnItsSideIsDrawnUpright() {
    // The origin corner is at the upper right: columns run down the photo, rows to the left.
    RgbImage photo = halves(40, 60);
    BufferedImage board = draw(photo, corner(40, 0), corner(40, 60), corner(0, 60), corner(0, 0));
    assertEquals(60, board.getWidth());
    assertEquals(40, board.getHeight());
    assertEquals(RED, board.getRGB(5, 20) & 0xffffff);
    assertEquals(BLUE, board.getRGB(55, 20) & 0xffffff);
  }

  @Test
  void aLargeBoardIsDrawnSmallerAndAPartOutsideThePhotoTakesItsEdge() {
    RgbImage photo = halves(1000, 2000);
    BufferedImage board =
        draw(
            photo,
            new PointPx(-300, 0),
            new PointPx(999, 0),
            new PointPx(999, 1999),
            new PointPx(-300, 1999));
    assertEquals(900, board.getHeight());
    assertTrue(board.getWidth() < 600, "width " + board.getWidth());
    assertEquals(RED, board.getRGB(0, 10) & 0xffffff);
  }

  @Test
  void aBoardWithoutCornersHasNoPicture() {
    PhotoResult.RaftDrawing none = new PhotoResult.RaftDrawing(List.of(), List.of(), List.of());
    assertEquals(Optional.empty(), BoardPicture.of(halves(4, 4), none));
  }

  /** Returns a corner of the photo's edge: half a pixel outside of its pixels' centres. */
  private static PointPx corner(double x, double y) {
    return new PointPx(x - 0.5, y - 0.5);
  }

  private static BufferedImage draw(RgbImage photo, PointPx... corners) {
    return BoardPicture.of(
            photo, new PhotoResult.RaftDrawing(List.of(corners), List.of(), List.of()))
        .orElseThrow();
  }

  private static RgbImage halves(int width, int height) {
    byte[] rgb = new byte[3 * width * height];
    for (int i = 0; i < width * height; i++) {
      rgb[3 * i + (i < width * height / 2 ? 0 : 2)] = (byte) 255;
    }
    return RgbImage.of(width, height, rgb);
  }

  private static void near(PointPx expected, Point2D.Double found) {
    assertEquals(expected.xPx(), found.x, 1e-4);
    assertEquals(expected.yPx(), found.y, 1e-4);
  }
}
