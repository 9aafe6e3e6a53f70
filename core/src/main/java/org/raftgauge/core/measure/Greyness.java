// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.raftgauge.core.pixels.RgbImage;

/** Tells a photo without colour, or with so little that leaf is taken for board. */
final class Greyness {
  /** Channels of a grey picture differ by no more than rounding and JPEG leave, of 255. */
  private static final int LEAST_DIFFERENCE = 6;

  /** Even a white board under white light shows this share of coloured pixels. */
  private static final double LEAST_SHARE = 0.001;

  private static final int STEP = 7;

  /**
   * Saturation (largest less smallest channel, over the largest) of leaf that is told from a board
   * at all.
   *
   * <p>Measured: of 228 rendered photos of leaf, haze among them, the palest thousandth had 0.27
   * and more. Photos of green leaf with a fifth of their colour had 0.14 to 0.24, and each plant of
   * 300 cm2 was told as 0; with two fifths they had 0.26 and more, and were measured.
   */
  private static final double LEAST_SATURATION = 0.25;

  /** Saturation of faded leaf, and the share of a photo that it covers at least. */
  private static final double FAINT_SATURATION = 0.1;

  private static final double FAINT_SHARE = 0.008;

  /** Blocks along the longer side, so that noise of single pixels is no colour. */
  private static final int BLOCKS = 250;

  /** What most blocks have is read off every so many. */
  private static final int EACH = 16;

  /** Darker blocks say nothing of colour, of 255. */
  private static final int LEAST_LEVEL = 40;

  private Greyness() {}

  /**
   * What is wrong with a photo's colours.
   *
   * @param reason in words
   * @param remedy what to do
   */
  record Fault(String reason, String remedy) {}

  /** Returns what is wrong with a photo's colours, where leaf could not be told by them. */
  static Optional<Fault> fault(RgbImage image) {
    if (isGrey(image)) {
      return Optional.of(
          new Fault("the photo has no colour", "set the camera to colour and photograph it again"));
    }
    return isPale(image)
        ? Optional.of(
            new Fault(
                "the photo has so little colour that leaf would pass for board",
                "set the camera's colours to natural and photograph it again"))
        : Optional.empty();
  }

  static boolean isGrey(RgbImage image) {
    byte[] rgb = image.rgb();
    int n = 0;
    int coloured = 0;
    for (int i = 0; i + 2 < rgb.length; i += 3 * STEP) {
      int r = rgb[i] & 0xff;
      int g = rgb[i + 1] & 0xff;
      int b = rgb[i + 2] & 0xff;
      int difference = Math.max(r, Math.max(g, b)) - Math.min(r, Math.min(g, b));
      coloured += difference > LEAST_DIFFERENCE ? 1 : 0;
      n++;
    }
    return coloured < LEAST_SHARE * n;
  }

  /**
   * Says whether hardly a block of the photo has as much colour as leaf has, and many differ a
   * little from what most have: an empty board may have no colour, or that of a lamp.
   */
  static boolean isPale(RgbImage image) {
    List<double[]> blocks = lit(image);
    double[] usual = new double[3];
    for (int c = 0; c < 3; c++) {
      int channel = c;
      double[] shares =
          IntStream.iterate(0, i -> i < blocks.size(), i -> i + EACH)
              .mapToObj(blocks::get)
              .mapToDouble(b -> b[channel] / (b[0] + b[1] + b[2]))
              .sorted()
              .toArray();
      usual[c] = shares.length == 0 ? 1 : Math.max(1e-3, shares[shares.length / 2]);
    }
    long coloured =
        blocks.stream().filter(b -> saturation(b[0], b[1], b[2]) >= LEAST_SATURATION).count();
    long faint =
        blocks.stream()
            .mapToDouble(b -> saturation(b[0] / usual[0], b[1] / usual[1], b[2] / usual[2]))
            .filter(saturation -> saturation >= FAINT_SATURATION)
            .count();
    return coloured < LEAST_SHARE * blocks.size() && faint > FAINT_SHARE * blocks.size();
  }

  private static double saturation(double red, double green, double blue) {
    double most = Math.max(red, Math.max(green, blue));
    return (most - Math.min(red, Math.min(green, blue))) / most;
  }

  /** Returns red, green and blue of the blocks that are lit. */
  private static List<double[]> lit(RgbImage image) {
    int side = Math.max(1, Math.max(image.width(), image.height()) / BLOCKS);
    List<double[]> lit = new ArrayList<>();
    for (int y = 0; y + side <= image.height(); y += side) {
      for (int x = 0; x + side <= image.width(); x += side) {
        double[] mean = mean(image, x, y, side);
        if (Math.max(mean[0], Math.max(mean[1], mean[2])) > LEAST_LEVEL) {
          lit.add(mean);
        }
      }
    }
    return lit;
  }

  /** Returns the mean red, green and blue of a block's every second row. */
  private static double[] mean(RgbImage image, int left, int top, int side) {
    byte[] rgb = image.rgb();
    int red = 0;
    int green = 0;
    int blue = 0;
    int rows = 0;
    for (int y = top; y < top + side; y += 2) {
      int at = 3 * (y * image.width() + left);
      for (int end = at + 3 * side; at < end; at += 3) {
        red += rgb[at] & 0xff;
        green += rgb[at + 1] & 0xff;
        blue += rgb[at + 2] & 0xff;
      }
      rows++;
    }
    double pixels = (double) rows * side;
    return new double[] {red / pixels, green / pixels, blue / pixels};
  }
}
