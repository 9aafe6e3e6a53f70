// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.show;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;
import org.raftgauge.core.opencv.DrawMarker;

/** Paints a photo of one small white board with four markers and four plants. */
final class PaintBoard {
  /** Scale of the photo, px a mm. */
  static final int PX_PER_MM = 2;

  /** What the photo shows, mm. */
  static final int WIDTH_MM = 260;

  static final int HEIGHT_MM = 330;
  private static final int WIDTH = PX_PER_MM * WIDTH_MM;
  private static final int HEIGHT = PX_PER_MM * HEIGHT_MM;
  private static final int BOARD_X_MM = 30;
  private static final int BOARD_Y_MM = 35;
  private static final int[][] MARKERS = {{28, 28}, {172, 28}, {172, 232}, {28, 232}};
  private static final int MARKER_MM = 40;

  private final BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
  private final Graphics2D pen = image.createGraphics();
  private final Random random;

  private PaintBoard(long seed) {
    this.random = new Random(seed);
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.scale(PX_PER_MM, PX_PER_MM);
  }

  /**
   * Paints.
   *
   * @param seed of the plants and the noise
   * @param ageDays of the plants
   * @return a JPEG file
   */
  static byte[] jpeg(int seed, int ageDays) throws IOException {
    PaintBoard board = new PaintBoard(seed);
    board.deck();
    for (int site = 0; site < 4; site++) {
      board.plant(65 + 70 * (site % 2), 95 + 70 * (site / 2), ageDays);
    }
    return board.file();
  }

  /** Paints a frame taken in the dark. */
  static byte[] dark(int seed) throws IOException {
    return new PaintBoard(seed).file();
  }

  private void deck() {
    pen.setColor(new Color(38, 48, 52));
    pen.fillRect(0, 0, WIDTH_MM, HEIGHT_MM);
    pen.setColor(new Color(222, 223, 220));
    pen.fillRect(BOARD_X_MM, BOARD_Y_MM, 200, 260);
    for (int id = 0; id < MARKERS.length; id++) {
      marker(id, MARKERS[id][0], MARKERS[id][1]);
    }
  }

  private void marker(int id, int xMm, int yMm) {
    byte[] cells = DrawMarker.cells(id);
    int cell = MARKER_MM / 8;
    for (int i = 0; i < cells.length; i++) {
      pen.setColor(cells[i] == 0 ? Color.BLACK : Color.WHITE);
      pen.fillRect(
          BOARD_X_MM + xMm - MARKER_MM / 2 + i % 8 * cell,
          BOARD_Y_MM + yMm - MARKER_MM / 2 + Math.floorDiv(i, 8) * cell,
          cell,
          cell);
    }
  }

  private void plant(int xMm, int yMm, int ageDays) {
    pen.setColor(new Color(60, 50, 42));
    pen.fill(new Ellipse2D.Double(BOARD_X_MM + xMm - 9, BOARD_Y_MM + yMm - 9, 18, 18));
    double reach = 36 / (1 + Math.exp(-(ageDays - 12) / 4.0)) * (0.85 + 0.3 * random.nextDouble());
    int leaves = 5 + ageDays / 3;
    for (int leaf = 0; leaf < leaves; leaf++) {
      double length = reach * (0.6 + 0.4 * leaf / leaves) * (0.9 + 0.2 * random.nextDouble());
      AffineTransform turn =
          AffineTransform.getTranslateInstance(BOARD_X_MM + xMm, BOARD_Y_MM + yMm);
      turn.rotate(leaf * 2.4 + 0.3 * random.nextDouble());
      int shade = random.nextInt(30);
      pen.setColor(new Color(70 + shade, 130 + shade, 45 + shade / 2));
      pen.fill(
          turn.createTransformedShape(
              new Ellipse2D.Double(0, -length * 0.3, length, length * 0.6)));
    }
  }

  private byte[] file() throws IOException {
    pen.dispose();
    int[] pixels = image.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH);
    for (int i = 0; i < pixels.length; i++) {
      int noise = (int) Math.round(3 * random.nextGaussian());
      int red = lit(pixels[i] >> 16 & 0xff, noise);
      int green = lit(pixels[i] >> 8 & 0xff, noise);
      pixels[i] = red << 16 | green << 8 | lit(pixels[i] & 0xff, noise);
    }
    image.setRGB(0, 0, WIDTH, HEIGHT, pixels, 0, WIDTH);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "jpg", out);
    return out.toByteArray();
  }

  private static int lit(int level, int noise) {
    return Math.max(0, Math.min(255, level + noise));
  }
}
