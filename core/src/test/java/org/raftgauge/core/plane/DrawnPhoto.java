// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

/**
 * Photos of a passing raft for tests of the whole way from bytes to areas: the board of the design
 * page's example with markers and tag, flat discs for plants, in the tests' own lens.
 */
public final class DrawnPhoto {
  private final int width;
  private final int height;
  private final Scene scene;
  private final PaintedBoard board;
  private double[] light = {1, 1, 1};
  private boolean mirrored;

  private DrawnPhoto(int width, int height, double turnDeg, double[] shiftMm) {
    this.width = width;
    this.height = height;
    this.scene = Scene.of(width, height, 11);
    Layout layout = TestLayouts.deck18();
    CameraPose pose =
        TestPoses.over(TestPoses.lens(width, height), layout.board(), 1600, turnDeg, 1.5, -1);
    this.board = scene.board(layout, TestPoses.shifted(pose, shiftMm[0], shiftMm[1]));
  }

  /** Begins an upright photo with a board in its middle. */
  public static DrawnPhoto upright() {
    return new DrawnPhoto(600, 1000, 0, new double[] {0, 0});
  }

  /** Begins a photo whose edge cuts the board: it lies that far to the right, mm. */
  public static DrawnPhoto shifted(double rightMm) {
    return new DrawnPhoto(600, 1000, 0, new double[] {rightMm, 0});
  }

  /** Begins a square photo with a turned board in its middle. */
  public static DrawnPhoto turned(double degrees) {
    return new DrawnPhoto(1000, 1000, degrees, new double[] {0, 0});
  }

  /** Glues a tag on. */
  public DrawnPhoto tagged(String raft) {
    board.tagged(raft);
    return this;
  }

  /** Sets the board's linear light, 0..1. */
  public DrawnPhoto board(double linear) {
    board.light(linear);
    return this;
  }

  /** Lays a leaf on the board. */
  public DrawnPhoto disc(double xMm, double yMm, double radiusMm, double... rgb) {
    board.discs.add(0, new double[] {xMm, yMm, radiusMm, rgb[0], rgb[1], rgb[2]});
    return this;
  }

  /** Multiplies red, green and blue light. */
  public DrawnPhoto light(double... times) {
    light = times.clone();
    return this;
  }

  /** Lets left and right be exchanged, as some cameras do. */
  public DrawnPhoto mirrored() {
    mirrored = true;
    return this;
  }

  /** Draws it as a PNG file. */
  public byte[] png() {
    RgbImage drawn = mirrored ? scene.draw().mirrored() : scene.draw();
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < width * height; i++) {
      int rgb = 0;
      for (int c = 0; c < 3; c++) {
        double linear = Srgb.linear(drawn.rgb()[3 * i + c]) * light[c];
        rgb = rgb << 8 | (int) Math.round(255 * Srgb.coded(Math.min(1, linear)));
      }
      image.setRGB(i % width, Math.floorDiv(i, width), rgb);
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** Returns the station file of upright or of square photos. */
  public static String station(int widthPx, int heightPx) {
    Lens lens = TestPoses.lens(widthPx, heightPx);
    return String.format(
        Locale.ROOT,
        """
        kind: passing
        image_width_px: %d
        image_height_px: %d
        lens: {fx_px: %s, fy_px: %s, cx_px: %s, cy_px: %s, k1: %s, k2: %s, p1: %s, p2: %s}
        camera_height_mm: 1600
        """,
        widthPx,
        heightPx,
        lens.fxPx(),
        lens.fyPx(),
        lens.cxPx(),
        lens.cyPx(),
        lens.k1(),
        lens.k2(),
        lens.p1(),
        lens.p2());
  }
}
