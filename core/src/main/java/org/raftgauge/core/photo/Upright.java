// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import org.raftgauge.core.pixels.RgbImage;

/**
 * How a stored picture is walked so that it stands upright.
 *
 * <p>Source: Exif 2.32 (CIPA DC-008), tag 0x0112: the number tells which sides of the upright
 * picture the first stored row and the first stored column are. 1 top left, 2 top right, 3 bottom
 * right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
 *
 * @param width of the upright picture, px
 * @param height of the upright picture, px
 * @param first index of the stored pixel that is the upright picture's upper left one
 * @param stepX what the next upright column adds to that index
 * @param stepY what the next upright row adds to it
 */
record Upright(int width, int height, int first, int stepX, int stepY) {

  /**
   * Returns the way of an orientation.
   *
   * @param storedWidth px
   * @param storedHeight px
   * @param orientation 1 to 8
   */
  static Upright of(int storedWidth, int storedHeight, int orientation) {
    boolean swapped = orientation >= 5;
    // Whether the stored picture is walked from its right, and from its bottom, end.
    boolean fromRight =
        orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    boolean fromBottom =
        orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    int alongX = fromRight ? -1 : 1;
    int alongY = (fromBottom ? -1 : 1) * storedWidth;
    int first =
        (fromBottom ? storedHeight - 1 : 0) * storedWidth + (fromRight ? storedWidth - 1 : 0);
    return new Upright(
        swapped ? storedHeight : storedWidth,
        swapped ? storedWidth : storedHeight,
        first,
        swapped ? alongY : alongX,
        swapped ? alongX : alongY);
  }

  /** Returns the way over the part of a stored picture that a multiple of so many pixels leaves. */
  static Upright ofMultiple(StoredPixels stored, int orientation, int parts) {
    int width = stored.width() - stored.width() % parts;
    int height = stored.height() - stored.height() % parts;
    Upright way = of(width, height, orientation);
    int cut = stored.width() - width;
    // Rows of the stored picture are longer than the part's by what was cut off.
    return new Upright(
        way.width,
        way.height,
        way.first + Math.floorDiv(way.first, width) * cut,
        inRows(way.stepX, width, cut),
        inRows(way.stepY, width, cut));
  }

  private static int inRows(int step, int width, int cut) {
    return Math.abs(step) == width ? step + Integer.signum(step) * cut : step;
  }

  /** Turns a picture; one that is upright already comes back as it is. */
  static RgbImage of(RgbImage stored, int orientation) {
    return orientation == 1
        ? stored
        : of(stored.width(), stored.height(), orientation).copy(stored.rgb());
  }

  /** Returns the index of the stored pixel that an upright one is. */
  int storedAt(int x, int y) {
    return first + x * stepX + y * stepY;
  }

  private RgbImage copy(byte[] from) {
    byte[] rgb = new byte[from.length];
    int to = 0;
    for (int y = 0; y < height; y++) {
      int at = 3 * storedAt(0, y);
      for (int x = 0; x < width; x++, at += 3 * stepX) {
        rgb[to++] = from[at];
        rgb[to++] = from[at + 1];
        rgb[to++] = from[at + 2];
      }
    }
    return RgbImage.of(width, height, rgb);
  }
}
