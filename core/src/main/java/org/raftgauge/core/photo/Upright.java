// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import org.raftgauge.core.pixels.RgbImage;

/** Turns a stored picture upright. */
final class Upright {

  private Upright() {}

  /**
   * Turns a picture as its orientation tag says.
   *
   * <p>Source: Exif 2.32 (CIPA DC-008), tag 0x0112: the number tells which sides of the upright
   * picture the first stored row and the first stored column are. 1 top left, 2 top right, 3 bottom
   * right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
   *
   * @param stored the picture as stored
   * @param orientation 1 to 8
   * @return the upright picture; the same object for 1
   */
  static RgbImage of(RgbImage stored, int orientation) {
    if (orientation == 1) {
      return stored;
    }
    boolean swapped = orientation >= 5;
    int width = swapped ? stored.height() : stored.width();
    int height = swapped ? stored.width() : stored.height();
    // Whether the stored picture is walked from its right, and from its bottom, end.
    boolean fromRight =
        orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    boolean fromBottom =
        orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    int alongStoredX = fromRight ? -3 : 3;
    int alongStoredY = (fromBottom ? -3 : 3) * stored.width();
    int first =
        3 * ((fromBottom ? stored.height() - 1 : 0) * stored.width())
            + 3 * (fromRight ? stored.width() - 1 : 0);
    int stepX = swapped ? alongStoredY : alongStoredX;
    int stepY = swapped ? alongStoredX : alongStoredY;
    return copy(stored.rgb(), new Walk(first, stepX, stepY), width, height);
  }

  /**
   * How the stored array is walked to fill the upright picture row by row.
   *
   * @param first index of the red value of the upright picture's first pixel
   * @param stepX what one px to the right adds
   * @param stepY what one px downward adds
   */
  private record Walk(int first, int stepX, int stepY) {}

  private static RgbImage copy(byte[] from, Walk walk, int width, int height) {
    byte[] rgb = new byte[from.length];
    int to = 0;
    for (int y = 0; y < height; y++) {
      int at = walk.first() + y * walk.stepY();
      for (int x = 0; x < width; x++, at += walk.stepX()) {
        rgb[to++] = from[at];
        rgb[to++] = from[at + 1];
        rgb[to++] = from[at + 2];
      }
    }
    return RgbImage.of(width, height, rgb);
  }
}
