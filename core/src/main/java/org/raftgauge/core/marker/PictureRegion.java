// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * An upright rectangle of a photo.
 *
 * @param x its left column
 * @param y its top row
 * @param width px, at least 1
 * @param height px, at least 1
 */
public record PictureRegion(int x, int y, int width, int height) {

  /** Checks the size. */
  public PictureRegion {
    if (width < 1 || height < 1) {
      throw new IllegalArgumentException("region must be >= 1 px, got " + width + " x " + height);
    }
  }

  /**
   * Returns the square about a place.
   *
   * @param centre its centre
   * @param halfPx half its side, px, above 0
   * @return the square; it may reach beyond the photo
   */
  public static PictureRegion around(PointPx centre, double halfPx) {
    int half = (int) Math.max(1, Math.ceil(halfPx));
    return new PictureRegion(
        (int) Math.round(centre.xPx()) - half,
        (int) Math.round(centre.yPx()) - half,
        2 * half + 1,
        2 * half + 1);
  }

  /**
   * Returns the part of the region that lies on a photo.
   *
   * @param image the photo
   * @return the part, at least 1 x 1 px: a region beside the photo gives its nearest pixel
   */
  public PictureRegion on(RgbImage image) {
    int left = Math.max(0, Math.min(image.width() - 1, x));
    int top = Math.max(0, Math.min(image.height() - 1, y));
    int right = Math.max(left + 1, Math.min(image.width(), x + width));
    int bottom = Math.max(top + 1, Math.min(image.height(), y + height));
    return new PictureRegion(left, top, right - left, bottom - top);
  }

  /** Returns a copy of the region of a photo; the region lies on it. */
  RgbImage cutFrom(RgbImage image) {
    byte[] cut = new byte[3 * width * height];
    for (int row = 0; row < height; row++) {
      System.arraycopy(
          image.rgb(), 3 * ((y + row) * image.width() + x), cut, 3 * row * width, 3 * width);
    }
    return RgbImage.of(width, height, cut);
  }
}
