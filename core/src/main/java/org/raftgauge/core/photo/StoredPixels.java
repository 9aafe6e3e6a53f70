// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Arrays;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A picture's levels as its file stores them, before they are turned upright and made red, green
 * and blue. Owns its array.
 */
final class StoredPixels {

  /** What the channels of a pixel are. */
  enum Colours {
    GREY(1),
    RGB(3),
    Y_CB_CR(3);

    private final int bands;

    Colours(int bands) {
      this.bands = bands;
    }
  }

  private final int width;
  private final int height;
  private final Colours colours;
  private final byte[] levels;

  StoredPixels(int width, int height, Colours colours, byte[] levels) {
    this.width = width;
    this.height = height;
    this.colours = colours;
    this.levels = levels;
  }

  static StoredPixels of(RgbImage image) {
    return new StoredPixels(image.width(), image.height(), Colours.RGB, image.rgb());
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Returns the whole picture; it takes the array over, so nothing else can be read afterwards. */
  RgbImage toRgb() {
    return switch (colours) {
      case GREY -> RgbImage.of(width, height, JpegColours.expandGrey(levels));
      case RGB -> RgbImage.of(width, height, levels);
      case Y_CB_CR -> {
        JpegColours.toRgb(levels);
        yield RgbImage.of(width, height, levels);
      }
    };
  }

  /**
   * Returns the picture with each square of pixels averaged to one, in code values; what is left
   * over at the right and at the bottom is cut off.
   *
   * @param parts pixels of a square's side, at least 2
   * @return the picture, {@code width / parts} by {@code height / parts}
   */
  RgbImage averaged(int parts) {
    int across = width / parts;
    int down = height / parts;
    int bands = colours.bands;
    byte[] means = new byte[across * down * bands];
    byte[] meanOfSum = meanOfSum(parts * parts);
    int[] sums = new int[across * bands];
    for (int y = 0; y < down; y++) {
      int first = y * parts * width * bands;
      if (parts == 2 && bands == 3) {
        pairs(means, y * sums.length, first, across);
        continue;
      }
      Arrays.fill(sums, 0);
      for (int row = 0; row < parts; row++) {
        addRow(sums, first + row * width * bands, parts);
      }
      for (int i = 0, at = y * sums.length; i < sums.length; i++, at++) {
        means[at] = meanOfSum[sums[i]];
      }
    }
    return new StoredPixels(across, down, colours, means).toRgb();
  }

  /**
   * Averages squares of two by two pixels of three levels along two rows, the upper at an index.
   */
  private void pairs(byte[] means, int to, int from, int across) {
    int below = 3 * width;
    int at = from;
    for (int i = to; i < to + 3 * across; i += 3, at += 6) {
      means[i] = mean(at, at + below);
      means[i + 1] = mean(at + 1, at + 1 + below);
      means[i + 2] = mean(at + 2, at + 2 + below);
    }
  }

  /** Returns the rounded mean of two levels and those of the same channel to their right. */
  private byte mean(int upper, int lower) {
    int sum =
        (levels[upper] & 0xff)
            + (levels[upper + 3] & 0xff)
            + (levels[lower] & 0xff)
            + (levels[lower + 3] & 0xff);
    return (byte) ((sum + 2) >> 2);
  }

  private void addRow(int[] sums, int from, int parts) {
    int at = from;
    if (colours == Colours.GREY) {
      for (int x = 0; x < sums.length; x++) {
        for (int i = 0; i < parts; i++) {
          sums[x] += levels[at++] & 0xff;
        }
      }
      return;
    }
    for (int x = 0; x < sums.length; x += 3) {
      int first = 0;
      int second = 0;
      int third = 0;
      for (int i = 0; i < parts; i++, at += 3) {
        first += levels[at] & 0xff;
        second += levels[at + 1] & 0xff;
        third += levels[at + 2] & 0xff;
      }
      sums[x] += first;
      sums[x + 1] += second;
      sums[x + 2] += third;
    }
  }

  /** Returns the rounded mean of n levels, by their sum. */
  private static byte[] meanOfSum(int n) {
    byte[] means = new byte[255 * n + 1];
    for (int sum = 0; sum < means.length; sum++) {
      means[sum] = (byte) ((sum + n / 2) / n);
    }
    return means;
  }

  /** Returns one pixel's red, green and blue as {@code 0xrrggbb}. */
  int rgbAt(int index) {
    int at = index * colours.bands;
    return switch (colours) {
      case GREY -> (levels[at] & 0xff) * 0x010101;
      case RGB ->
          (levels[at] & 0xff) << 16 | (levels[at + 1] & 0xff) << 8 | (levels[at + 2] & 0xff);
      case Y_CB_CR -> JpegColours.toRgb(levels, at);
    };
  }
}
