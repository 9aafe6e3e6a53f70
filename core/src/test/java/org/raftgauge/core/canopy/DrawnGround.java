// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.Random;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DeckScale;
import org.raftgauge.core.plane.RectifyDeck;

/**
 * Draws ground with plants in linear light, with clods, shade and sensor noise: same seed, same
 * picture.
 */
public final class DrawnGround {
  /** Code values of dry soil: a* 6, and of a leaf: a* -27. */
  private static final int[] SOIL = {130, 105, 80};

  private static final int[] LEAF = {85, 135, 55};

  private final int width;
  private final int height;
  private final double[][] rgb;
  private final double[] cover;
  private final Random random = new Random(11);

  private DrawnGround(int width, int height) {
    this.width = width;
    this.height = height;
    this.rgb = new double[3][width * height];
    this.cover = new double[width * height];
  }

  /** Draws soil with clods of 2 to 20 px. */
  public static DrawnGround soil(int width, int height) {
    return new DrawnGround(width, height).cover(SOIL, 0.35);
  }

  /** Draws leaf from rim to rim, in tones of leaves of 2 to 20 px. */
  public static DrawnGround closed(int width, int height) {
    DrawnGround ground = new DrawnGround(width, height).cover(LEAF, 0.5);
    Arrays.fill(ground.cover, 1);
    return ground;
  }

  private DrawnGround cover(int[] colour, double relief) {
    for (int i = 0; i < width * height; i++) {
      for (int c = 0; c < 3; c++) {
        rgb[c][i] = Srgb.linear(colour[c] / 255.0);
      }
    }
    for (int n = 0; n < width * height / 60; n++) {
      double tone = Math.exp(relief * random.nextGaussian());
      double[] at = {random.nextDouble() * width, random.nextDouble() * height};
      double r = 1 + 9 * random.nextDouble() * random.nextDouble();
      paint(at, new double[] {r, r, 0}, new double[] {tone, tone, tone, 1}, 1.0);
    }
    return this;
  }

  /** Draws an elliptic leaf: middle, half axes, turn in radians. */
  public DrawnGround leaf(double x, double y, double a, double b, double turn) {
    return leaf(new double[] {x, y}, new double[] {a, b, turn}, LEAF);
  }

  /** Draws an elliptic leaf of a colour in code values. */
  public DrawnGround leaf(double[] at, double[] shape, int[] colour) {
    double[] light = new double[4];
    for (int c = 0; c < 3; c++) {
      light[c] = Srgb.linear(colour[c] / 255.0);
    }
    paint(at, shape, light, 1.0);
    return this;
  }

  /** Draws a greenish film that fades out over its whole reach. */
  public DrawnGround moss(double x, double y, double reach) {
    paint(
        new double[] {x, y}, new double[] {reach, reach, 0}, new double[] {.92, 1.1, .9, 1}, reach);
    return this;
  }

  /**
   * Multiplies (fourth value 1) or replaces (0) the light in an ellipse with a rim {@code soft} px
   * wide.
   */
  private void paint(double[] at, double[] shape, double[] light, double soft) {
    double cos = Math.cos(shape[2]);
    double sin = Math.sin(shape[2]);
    int reach = (int) Math.ceil(Math.max(shape[0], shape[1]) + soft);
    int x1 = (int) Math.min(width - 1.0, at[0] + reach);
    int y1 = (int) Math.min(height - 1.0, at[1] + reach);
    for (int y = (int) Math.max(0, at[1] - reach); y <= y1; y++) {
      for (int x = (int) Math.max(0, at[0] - reach); x <= x1; x++) {
        double u = ((x - at[0]) * cos + (y - at[1]) * sin) / shape[0];
        double v = ((y - at[1]) * cos - (x - at[0]) * sin) / shape[1];
        double inside = (1 - Math.hypot(u, v)) * Math.min(shape[0], shape[1]);
        double share = Math.max(0, Math.min(1, inside / soft + 0.5));
        blend(y * width + x, light, share);
      }
    }
  }

  private void blend(int i, double[] light, double share) {
    for (int c = 0; c < 3; c++) {
      double to = light[3] == 1 ? rgb[c][i] * light[c] : light[c];
      rgb[c][i] += share * (to - rgb[c][i]);
    }
    if (light[3] == 0) {
      cover[i] += share * (1 - cover[i]);
    }
  }

  /** Returns the share of a pixel that is leaf. */
  double coverAt(int i) {
    return cover[i];
  }

  /** Returns the drawn leaf area, px. */
  public double areaPx() {
    return Arrays.stream(cover).sum();
  }

  /** Returns the photo, with noise of 2 code values. */
  public RgbImage photo() {
    byte[] bytes = new byte[3 * width * height];
    for (int i = 0; i < width * height; i++) {
      for (int c = 0; c < 3; c++) {
        double code = 255 * Srgb.coded(Math.min(1, rgb[c][i])) + 2 * random.nextGaussian();
        bytes[3 * i + c] = (byte) Math.round(Math.max(0, Math.min(255, code)));
      }
    }
    return RgbImage.of(width, height, bytes);
  }

  /** Returns the photo as a deck picture of 1 mm a pixel, with a margin that the photo lacks. */
  DeckImage deck(int marginPx) {
    double middleX = (width - 1) / 2.0;
    double middleY = (height - 1) / 2.0;
    Lens lens = new Lens(1000, 1000, middleX, middleY, 0, 0, 0, 0, 0);
    double[] level = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    double[] over = {-width / 2.0, -height / 2.0, 1000};
    return RectifyDeck.rectify(
        photo(),
        CameraPose.of(lens, level, over),
        new Board(width, height),
        new DeckScale(1, marginPx));
  }
}
