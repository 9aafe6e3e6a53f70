// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.RgbImage;

/** Blur read off drawn boards whose edges are Gaussian steps in linear light. */
class EdgeBlurTest {
  private static final int WIDTH = 800;
  private static final int HEIGHT = 1400;
  private static final int MARGIN = 100;
  private static final Lens LENS = new Lens(1600, 1600, 399.5, 699.5, 0, 0, 0, 0, 0);

  /** The board of 600 x 1200 mm at 1 mm a pixel, its corner 100 px from the picture's. */
  private static FoundBoard board() {
    Board size = TestLayouts.deck18().board();
    CameraPose over = TestPoses.over(LENS, size, 1600, 0, 0, 0);
    PointMm corner = new PointMm(0, 0);
    assertEquals(MARGIN, over.toPhoto(corner).xPx(), 1);
    return new FoundBoard(
        Optional.empty(),
        Optional.empty(),
        TestLayouts.deck18(),
        over,
        PoseSource.OUTLINE,
        1,
        true,
        List.of(),
        "");
  }

  private static RgbImage draw(FoundBoard board, DoubleBinaryOperator sigmaAt) {
    double left = board.pose().toPhoto(new PointMm(0, 0)).xPx();
    double top = board.pose().toPhoto(new PointMm(0, 0)).yPx();
    double right = board.pose().toPhoto(new PointMm(600, 1200)).xPx();
    double bottom = board.pose().toPhoto(new PointMm(600, 1200)).yPx();
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        double s = sigmaAt.applyAsDouble(x, y);
        double in = step((x - left) / s) * step((right - x) / s) * step((y - top) / s);
        double light = 0.03 + 0.62 * in * step((bottom - y) / s);
        byte value = (byte) Math.round(255 * encoded(light));
        int i = 3 * (y * WIDTH + x);
        rgb[i] = value;
        rgb[i + 1] = value;
        rgb[i + 2] = value;
      }
    }
    return RgbImage.of(WIDTH, HEIGHT, rgb);
  }

  private static double step(double z) {
    return 0.5 * (1 + Erf.erf(z / Math.sqrt(2)));
  }

  /** The sRGB transfer function, IEC 61966-2-1. */
  private static double encoded(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
  }

  @Test
  void blurIsThatOfTheEdgesDrawn() {
    FoundBoard board = board();
    for (double sigma : new double[] {0.8, 1.2, 2, 3}) {
      EdgeBlur blur = EdgeBlur.of(draw(board, (x, y) -> sigma), List.of(board));
      // Reading between pixels and the slope over one pixel add up to 1/4 px2 to the variance.
      double most = Math.sqrt(sigma * sigma + 0.25);
      double found = blur.blurPx().getAsDouble();
      assertTrue(found > 0.97 * sigma && found < 1.03 * most, sigma + " px: " + found);
    }
  }

  @Test
  void smearInOnePartShowsInThatPartAlone() {
    FoundBoard board = board();
    RgbImage photo = draw(board, (x, y) -> x < WIDTH / 2.0 && y > HEIGHT / 2.0 ? 2.4 : 0.8);
    EdgeBlur blur = EdgeBlur.of(photo, List.of(board));
    assertEquals(EdgeBlur.CELLS * EdgeBlur.CELLS, blur.cells().size());
    // The board's left edge runs at 100 of 800 px, its right one at 700: columns 1 and 8.
    assertTrue(part(blur, 7, 1).getAsDouble() > 2.2, blur.cells().toString());
    assertTrue(part(blur, 7, 8).getAsDouble() < 1.1, blur.cells().toString());
    assertTrue(blur.blurPx().getAsDouble() < 1.1, "the middle of all edges");
    assertEquals(OptionalDouble.empty(), part(blur, 4, 4), "no edge lies in the middle");
  }

  private static OptionalDouble part(EdgeBlur blur, int row, int column) {
    return blur.cells().get(EdgeBlur.CELLS * row + column);
  }

  @Test
  void photoWithoutAPlacedBoardTellsNothing() {
    FoundBoard board = board();
    RgbImage photo = draw(board, (x, y) -> 1);
    assertEquals(OptionalDouble.empty(), EdgeBlur.of(photo, List.of()).blurPx());
    assertEquals(
        OptionalDouble.empty(), EdgeBlur.of(photo, List.of(board.withHeld("no"))).blurPx());
  }
}
