// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * A grey picture of 16 bits a pixel, row by row.
 *
 * <p>Owns its array; read only.
 */
public final class DeepImage {
  private final int width;
  private final int height;
  private final short[] levels;

  private DeepImage(int width, int height, short[] levels) {
    this.width = width;
    this.height = height;
    this.levels = levels;
  }

  /**
   * Returns a picture of these levels.
   *
   * @param width px
   * @param height px
   * @param levels 0..65535 a pixel, unsigned, length {@code width * height}; copied
   * @return the picture
   */
  public static DeepImage of(int width, int height, short[] levels) {
    if (width < 1 || height < 1 || levels.length != width * height) {
      throw new IllegalArgumentException(
          "levels must be " + width + " x " + height + ", got " + levels.length);
    }
    return new DeepImage(width, height, levels.clone());
  }

  /** Returns the width, px. */
  public int width() {
    return width;
  }

  /** Returns the height, px. */
  public int height() {
    return height;
  }

  /**
   * Returns a level.
   *
   * @param x column, 0 to width - 1
   * @param y row, 0 to height - 1
   * @return 0..65535
   */
  public int level(int x, int y) {
    return levels[y * width + x] & 0xffff;
  }
}
