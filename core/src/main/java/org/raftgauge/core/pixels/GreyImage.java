// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * A grey picture of 8 bits a pixel, row by row.
 *
 * <p>Owns its array; read only.
 */
public final class GreyImage {
  private final int width;
  private final int height;
  private final byte[] levels;

  private GreyImage(int width, int height, byte[] levels) {
    this.width = width;
    this.height = height;
    this.levels = levels;
  }

  /**
   * Returns the luma of a colour picture: 0.299 R + 0.587 G + 0.114 B (ITU-R BT.601).
   *
   * @param image the picture
   * @return a picture of the same size
   */
  public static GreyImage of(RgbImage image) {
    byte[] levels = new byte[image.width() * image.height()];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = (byte) luma(image, i);
    }
    return new GreyImage(image.width(), image.height(), levels);
  }

  /**
   * Returns the luma of one pixel of a colour picture.
   *
   * @param image the picture
   * @param index of the pixel, {@code y * width + x}
   * @return 0 to 255
   */
  public static int luma(RgbImage image, int index) {
    byte[] rgb = image.rgb();
    int r = rgb[3 * index] & 0xff;
    int g = rgb[3 * index + 1] & 0xff;
    int b = rgb[3 * index + 2] & 0xff;
    return (299 * r + 587 * g + 114 * b + 500) / 1000;
  }

  /**
   * Returns a picture of these levels.
   *
   * @param width px
   * @param height px
   * @param levels 0..255 a pixel, length {@code width * height}; copied
   * @return the picture
   */
  public static GreyImage of(int width, int height, byte[] levels) {
    if (width < 1 || height < 1 || levels.length != width * height) {
      throw new IllegalArgumentException(
          "levels must be " + width + " x " + height + ", got " + levels.length);
    }
    return new GreyImage(width, height, levels.clone());
  }

  /** Returns the width, px. */
  public int width() {
    return width;
  }

  /** Returns the height, px. */
  public int height() {
    return height;
  }

  /** Returns the levels, 0..255 a pixel; read only. */
  public byte[] levels() {
    return levels;
  }
}
