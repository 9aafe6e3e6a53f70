// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

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

  /** Darker blocks say nothing of colour, of 255. */
  private static final int LEAST_LEVEL = 40;

  private Greyness() {}

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
   * Says whether hardly a block of the photo has as much colour as leaf has, and many a little: a
   * board without plants may have none.
   */
  static boolean isPale(RgbImage image) {
    int side = Math.max(1, Math.max(image.width(), image.height()) / BLOCKS);
    int lit = 0;
    int coloured = 0;
    int faint = 0;
    for (int y = 0; y + side <= image.height(); y += side) {
      for (int x = 0; x + side <= image.width(); x += side) {
        long[] sums = sums(image, x, y, side);
        long most = Math.max(sums[0], Math.max(sums[1], sums[2]));
        long least = Math.min(sums[0], Math.min(sums[1], sums[2]));
        if (most > (long) LEAST_LEVEL * side * side) {
          lit++;
          coloured += most - least >= LEAST_SATURATION * most ? 1 : 0;
          faint += most - least >= FAINT_SATURATION * most ? 1 : 0;
        }
      }
    }
    return coloured < LEAST_SHARE * lit && faint > FAINT_SHARE * lit;
  }

  private static long[] sums(RgbImage image, int left, int top, int side) {
    byte[] rgb = image.rgb();
    long[] sums = new long[3];
    for (int y = top; y < top + side; y++) {
      int at = 3 * (y * image.width() + left);
      for (int i = 0; i < 3 * side; i++) {
        sums[i % 3] += rgb[at + i] & 0xff;
      }
    }
    return sums;
  }
}
