// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

/**
 * Draws deck pictures for tests, without a camera between: each pixel is the mean of 8 x 8 places
 * in linear light, blurred, then coded to 8 bits with noise.
 */
public final class DrawnDeck {
  private static final int FINE = 8;

  private final Board board;
  private final DeckScale scale;
  private double blurPx;
  private double noise;
  private double[] light = {1, 1, 1};

  /** What lies where. */
  public interface Look {
    /** Writes the linear light that a place of the deck sends, mm. */
    void at(double xMm, double yMm, double[] rgb);
  }

  /** Begins a picture of a board with a margin of 20 mm. */
  public DrawnDeck(Board board, double mmPerPx) {
    this.board = board;
    this.scale = new DeckScale(mmPerPx, 20);
  }

  /** Sets the spread of the Gaussian blur, px. */
  public DrawnDeck blur(double px) {
    blurPx = px;
    return this;
  }

  /** Sets the spread of the noise, codes. */
  public DrawnDeck noise(double codes) {
    noise = codes;
    return this;
  }

  /** Multiplies red, green and blue light. */
  public DrawnDeck light(double... times) {
    light = times.clone();
    return this;
  }

  /** Draws. */
  public DeckImage draw(Look look) {
    int width = scale.pixels(board.widthMm());
    int height = scale.pixels(board.lengthMm());
    float[] linear = blurred(sampled(look, width, height), width, height);
    Random random = new Random(7);
    byte[] rgb = new byte[linear.length];
    for (int i = 0; i < rgb.length; i++) {
      double v = Math.max(0, Math.min(1, linear[i] * light[i % 3]));
      double code = 255 * Srgb.coded(v) + noise * random.nextGaussian();
      rgb[i] = (byte) Math.max(0, Math.min(255, Math.round(code)));
    }
    boolean[] seen = new boolean[width * height];
    java.util.Arrays.fill(seen, true);
    return new DeckImage(RgbImage.of(width, height, rgb), seen, scale.mmPerPx(), scale.marginMm());
  }

  private float[] sampled(Look look, int width, int height) {
    float[] linear = new float[3 * width * height];
    for (int i = 0; i < width * height; i++) {
      double[] mean = mean(look, i % width, Math.floorDiv(i, width));
      for (int c = 0; c < 3; c++) {
        linear[3 * i + c] = (float) mean[c];
      }
    }
    return linear;
  }

  /** Where all four corners show the same, no edge is taken to run through a pixel. */
  private double[] mean(Look look, int x, int y) {
    double[] first = place(look, x, y, 0);
    boolean plain = true;
    for (int k : new int[] {FINE - 1, FINE * (FINE - 1), FINE * FINE - 1}) {
      plain &= java.util.Arrays.equals(first, place(look, x, y, k));
    }
    if (plain) {
      return first;
    }
    double[] mean = new double[3];
    for (int k = 0; k < FINE * FINE; k++) {
      double[] rgb = place(look, x, y, k);
      for (int c = 0; c < 3; c++) {
        mean[c] += rgb[c] / (FINE * FINE);
      }
    }
    return mean;
  }

  private double[] place(Look look, int x, int y, int k) {
    double[] rgb = new double[3];
    double u = x + (k % FINE + 0.5) / FINE;
    double v = y + (Math.floorDiv(k, FINE) + 0.5) / FINE;
    look.at(u * scale.mmPerPx() - scale.marginMm(), v * scale.mmPerPx() - scale.marginMm(), rgb);
    return rgb;
  }

  private float[] blurred(float[] linear, int width, int height) {
    if (blurPx == 0) {
      return linear;
    }
    return oneWay(oneWay(linear, width, height, 1), width, height, width);
  }

  private float[] oneWay(float[] from, int width, int height, int step) {
    int reach = (int) Math.ceil(4 * blurPx);
    float[] to = new float[from.length];
    for (int i = 0; i < width * height; i++) {
      int at = step == 1 ? i % width : Math.floorDiv(i, width);
      int last = step == 1 ? width - 1 : height - 1;
      double weights = 0;
      double[] sum = new double[3];
      for (int d = -reach; d <= reach; d++) {
        int from3 = 3 * (i + step * (Math.max(0, Math.min(last, at + d)) - at));
        double w = Math.exp(-0.5 * d * d / (blurPx * blurPx));
        weights += w;
        for (int c = 0; c < 3; c++) {
          sum[c] += w * from[from3 + c];
        }
      }
      for (int c = 0; c < 3; c++) {
        to[3 * i + c] = (float) (sum[c] / weights);
      }
    }
    return to;
  }

  /** Returns a picture of 8-bit codes with no margin. */
  public static DeckImage painted(int width, int height, double mmPerPx, byte[] rgb) {
    boolean[] seen = new boolean[width * height];
    java.util.Arrays.fill(seen, true);
    return new DeckImage(RgbImage.of(width, height, rgb), seen, mmPerPx, 0);
  }

  /** Returns a deck picture of nothing, one mm a pixel, for what does not look at its colours. */
  public static DeckImage blank(int width, int height, double mmPerPx) {
    byte[] rgb = new byte[3 * width * height];
    java.util.Arrays.fill(rgb, (byte) 128);
    boolean[] seen = new boolean[width * height];
    java.util.Arrays.fill(seen, true);
    return new DeckImage(RgbImage.of(width, height, rgb), seen, mmPerPx, 0);
  }

  /** Returns a camera that looks straight down over a place of the deck. */
  public static CameraPose above(double xMm, double yMm, double heightMm) {
    return CameraPose.of(
        new Lens(1000, 1000, 500, 500, 0, 0, 0, 0, 0),
        new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1},
        new double[] {-xMm, -yMm, heightMm});
  }

  /** Returns a layout without markers or tag. */
  public static Layout layout(Board board, SiteGrid grid) {
    return new Layout(
        "drawn",
        Optional.empty(),
        board,
        grid,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
