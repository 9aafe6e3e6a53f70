// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * An 8-bit colour picture in sRGB, interleaved {@code r g b}, row by row; index of a pixel is
 * {@code 3 * (y * width + x)}.
 *
 * <p>Not a record: it owns an array. The array is handed over, not copied, by {@link #of} and
 * {@link #rgb}: a 24 megapixel photo is 72 MB and is passed on once. Neither side may write to it
 * afterwards.
 */
public final class RgbImage {
  private final int width;
  private final int height;
  private final byte[] rgb;

  private RgbImage(int width, int height, byte[] rgb) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
  }

  /**
   * Wraps an array of pixels without copying it.
   *
   * @param width px, at least 1
   * @param height px, at least 1
   * @param rgb length {@code 3 * width * height}
   * @return the picture
   * @throws IllegalArgumentException if a size is under 1 or the length does not fit
   */
  public static RgbImage of(int width, int height, byte[] rgb) {
    if (width < 1 || height < 1) {
      throw new IllegalArgumentException("size must be >= 1 x 1, got " + width + " x " + height);
    }
    if (rgb.length != 3L * width * height) {
      throw new IllegalArgumentException(
          "rgb length must be " + 3L * width * height + ", got " + rgb.length);
    }
    return new RgbImage(width, height, rgb);
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
  }

  /** Returns the picture's own array; read only. */
  public byte[] rgb() {
    return rgb;
  }

  /** Returns the picture with left and right exchanged, a copy. */
  public RgbImage mirrored() {
    byte[] to = new byte[rgb.length];
    for (int i = 0; i < width * height; i++) {
      int x = i % width;
      System.arraycopy(rgb, 3 * i, to, 3 * (i - x + width - 1 - x), 3);
    }
    return new RgbImage(width, height, to);
  }

  /**
   * Returns one channel of one pixel.
   *
   * @param x column, 0 to width - 1
   * @param y row, 0 to height - 1
   * @param channel 0 red, 1 green, 2 blue
   * @return 0 to 255
   */
  public int value(int x, int y, int channel) {
    return rgb[3 * (y * width + x) + channel] & 0xff;
  }
}
