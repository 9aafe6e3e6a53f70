// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DeckScale;
import org.raftgauge.core.plane.FoundBoard;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.plane.RectifyDeck;
import org.raftgauge.core.plane.Rotations;

/**
 * A board of 300 x 400 mm with a block of known height on it under two cameras 800 mm over the
 * deck: deck and block are speckled, each pixel shows what its ray meets.
 */
final class TwoCameras {
  static final double BLOCK_MM = 60;
  static final Board BOARD = new Board(300, 400);
  private static final int WIDTH = 420;
  private static final int HEIGHT = 520;
  private static final Lens FIRST = new Lens(850, 850, 212, 262, -0.08, 0.01, 0, 0, 0);
  private static final Lens SECOND = new Lens(860, 860, 205, 258, -0.07, 0.01, 0, 0, 0);
  private static final double[] SPECKS = specks();

  /** The second camera's turn against the first, radians. */
  private static final double[] TURN = {0.004, -0.010, 0.006};

  private static final double[] SHIFT = {-70, 1.5, -1};

  private static final RgbImage PHOTO = photo(first());
  private static final DeckImage DECK =
      RectifyDeck.rectify(PHOTO, first(), BOARD, new DeckScale(1, 0));

  private TwoCameras() {}

  private static double[] specks() {
    Random random = new Random(7);
    return random.doubles(160 * 160).toArray();
  }

  static CameraPose first() {
    double[] r = Rotations.about(0.01, 0.015, 0.02);
    double[] eye = {115, 205, -800};
    double[] t = PairGeometry.turned(r, eye);
    return CameraPose.of(FIRST, r, new double[] {-t[0], -t[1], -t[2]});
  }

  /** The second camera, moved so that it sees things so many px lower. */
  private static CameraPose second(double lowerPx) {
    double[] turn = Rotations.about(TURN[0] - lowerPx / 860, TURN[1], TURN[2]);
    double[] t = PairGeometry.turned(turn, first().translationMm());
    return CameraPose.of(
        SECOND,
        Rotations.times(turn, first().rotation()),
        new double[] {t[0] + SHIFT[0], t[1] + SHIFT[1], t[2] + SHIFT[2]});
  }

  static SecondCamera camera(SecondCamera.Sees sees) {
    return new SecondCamera(
        sees,
        "_2",
        "",
        WIDTH,
        HEIGHT,
        SECOND,
        List.of(Math.toDegrees(TURN[0]), Math.toDegrees(TURN[1]), Math.toDegrees(TURN[2])),
        List.of(SHIFT[0], SHIFT[1], SHIFT[2]));
  }

  static boolean onBlock(PointMm p) {
    return p.xMm() > 100 && p.xMm() < 200 && p.yMm() > 120 && p.yMm() < 280;
  }

  /** Returns the height of what a pixel's ray meets: the block's top, else the deck. */
  private static double heightAt(CameraPose pose, PointPx pixel) {
    return onBlock(pose.toHeight(pixel, BLOCK_MM)) ? BLOCK_MM : 0;
  }

  static RgbImage firstPhoto() {
    return PHOTO;
  }

  static RgbImage secondPhoto(double lowerPx) {
    return photo(second(lowerPx));
  }

  private static RgbImage photo(CameraPose pose) {
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      double sum = 0;
      for (int k = 0; k < 9; k++) {
        double dx = (k % 3 - 1) / 3.0;
        double dy = (Math.floorDiv(k, 3) - 1) / 3.0;
        PointPx pixel = new PointPx(i % WIDTH + dx, Math.floorDiv(i, WIDTH) + dy);
        double z = heightAt(pose, pixel);
        sum += speck(pose.toHeight(pixel, z), z) / 9;
      }
      byte level = (byte) Math.round(40 + 180 * sum);
      rgb[3 * i] = level;
      rgb[3 * i + 1] = level;
      rgb[3 * i + 2] = level;
    }
    return RgbImage.of(WIDTH, HEIGHT, rgb);
  }

  /** Speckles 5 mm across, other ones on the block, smooth between their middles. */
  private static double speck(PointMm p, double z) {
    double x = p.xMm() / 5 + (z > 0 ? 37.5 : 0) + 40;
    double y = p.yMm() / 5 + (z > 0 ? 11.5 : 0) + 40;
    int x0 = (int) Math.floor(x);
    int y0 = (int) Math.floor(y);
    double fx = x - x0;
    double fy = y - y0;
    return (1 - fy) * ((1 - fx) * speck(x0, y0) + fx * speck(x0 + 1, y0))
        + fy * ((1 - fx) * speck(x0, y0 + 1) + fx * speck(x0 + 1, y0 + 1));
  }

  private static double speck(int x, int y) {
    return SPECKS[Math.floorMod(y, 160) * 160 + Math.floorMod(x, 160)];
  }

  /** Depth along the second camera's axis, mm, 0 in the picture's first rows. */
  static short[] depths() {
    CameraPose pose = second(0);
    double[] r = pose.rotation();
    double[] t = pose.translationMm();
    short[] depths = new short[WIDTH * HEIGHT];
    for (int i = WIDTH * 20; i < depths.length; i++) {
      PointPx pixel = new PointPx(i % WIDTH, Math.floorDiv(i, WIDTH));
      double z = heightAt(pose, pixel);
      PointMm p = pose.toHeight(pixel, z);
      depths[i] = (short) Math.round(r[6] * p.xMm() + r[7] * p.yMm() - r[8] * z + t[2]);
    }
    return depths;
  }

  static int width() {
    return WIDTH;
  }

  static int height() {
    return HEIGHT;
  }

  static FoundBoard board() {
    Layout layout =
        new Layout(
            "test",
            Optional.empty(),
            BOARD,
            new SiteGrid(1, 1, 150, 200, 300, 400, 0),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new FoundBoard(
        Optional.empty(),
        Optional.empty(),
        layout,
        first(),
        PoseSource.MARKERS,
        0.3,
        true,
        List.of(),
        "");
  }

  static DeckImage deck() {
    return DECK;
  }
}
