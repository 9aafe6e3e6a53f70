// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import org.raftgauge.core.pixels.RgbImage;

/** Draws the photo itself at another size: each drawn pixel is the mean of those it covers. */
final class BasePicture {

  private BasePicture() {}

  /**
   * Draws a photo.
   *
   * @param photo the photo
   * @param scale its size on the overlay
   * @param stripPx height to leave free below it, px
   * @return the picture
   */
  static BufferedImage of(RgbImage photo, Scale scale, int stripPx) {
    BufferedImage picture =
        new BufferedImage(scale.width(), scale.height() + stripPx, BufferedImage.TYPE_INT_RGB);
    int[] to = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
    int[] left = edges(scale.width(), photo.width());
    int[] top = edges(scale.height(), photo.height());
    for (int y = 0; y < scale.height(); y++) {
      int bottom = Math.max(top[y + 1], top[y] + 1);
      for (int x = 0; x < scale.width(); x++) {
        int right = Math.max(left[x + 1], left[x] + 1);
        to[y * scale.width() + x] = mean(photo, new Box(left[x], top[y], right, bottom));
      }
    }
    return picture;
  }

  /** Returns the photo pixel at which each drawn pixel starts, and the end. */
  private static int[] edges(int drawn, int photo) {
    int[] edges = new int[drawn + 1];
    for (int i = 0; i <= drawn; i++) {
      edges[i] = (int) ((long) i * photo / drawn);
    }
    return edges;
  }

  private static int mean(RgbImage photo, Box box) {
    byte[] rgb = photo.rgb();
    int red = 0;
    int green = 0;
    int blue = 0;
    for (int y = box.top(); y < box.bottom(); y++) {
      for (int i = 3 * (y * photo.width() + box.left()), n = box.left(); n < box.right(); n++) {
        red += rgb[i++] & 0xff;
        green += rgb[i++] & 0xff;
        blue += rgb[i++] & 0xff;
      }
    }
    int pixels = (box.bottom() - box.top()) * (box.right() - box.left());
    return ((red / pixels) << 16) | ((green / pixels) << 8) | (blue / pixels);
  }
}
