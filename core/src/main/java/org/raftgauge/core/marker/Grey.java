// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import boofcv.struct.image.GrayU8;
import java.util.Arrays;
import org.raftgauge.core.pixels.RgbImage;

/** Turns part of a photo into the grey picture that the tag detector reads. */
final class Grey {

  private Grey() {}

  /** Returns the luma (ITU-R BT.601) of a part, enlarged bilinearly. */
  static GrayU8 of(RgbImage image, PictureRegion part, int enlarge) {
    GrayU8 grey = new GrayU8(part.width(), part.height());
    byte[] rgb = image.rgb();
    for (int y = 0; y < part.height(); y++) {
      int from = 3 * ((part.y() + y) * image.width() + part.x());
      for (int x = 0; x < part.width(); x++) {
        int i = from + 3 * x;
        int luma = 299 * (rgb[i] & 0xff) + 587 * (rgb[i + 1] & 0xff) + 114 * (rgb[i + 2] & 0xff);
        grey.data[y * grey.width + x] = (byte) ((luma + 500) / 1000);
      }
    }
    return enlarge == 1 ? grey : enlarged(grey, enlarge);
  }

  /**
   * Returns the luma of a photo with squares of pixels averaged to one; what is left over at the
   * right and at the bottom is cut off.
   */
  static GrayU8 averaged(RgbImage image, int parts) {
    GrayU8 grey = new GrayU8(image.width() / parts, image.height() / parts);
    byte[] rgb = image.rgb();
    int whole = 1000 * parts * parts;
    int[] sums = new int[grey.width];
    for (int y = 0; y < grey.height; y++) {
      Arrays.fill(sums, whole / 2);
      for (int row = y * parts; row < (y + 1) * parts; row++) {
        int i = 3 * row * image.width();
        for (int x = 0; x < sums.length; x++) {
          for (int k = 0; k < parts; k++, i += 3) {
            sums[x] +=
                299 * (rgb[i] & 0xff) + 587 * (rgb[i + 1] & 0xff) + 114 * (rgb[i + 2] & 0xff);
          }
        }
      }
      for (int x = 0; x < sums.length; x++) {
        grey.data[y * grey.width + x] = (byte) (sums[x] / whole);
      }
    }
    return grey;
  }

  private static GrayU8 enlarged(GrayU8 grey, int factor) {
    GrayU8 large = new GrayU8(grey.width * factor, grey.height * factor);
    for (int y = 0; y < large.height; y++) {
      double sy = clamp((y + 0.5) / factor - 0.5, grey.height - 1);
      for (int x = 0; x < large.width; x++) {
        double sx = clamp((x + 0.5) / factor - 0.5, grey.width - 1);
        large.data[y * large.width + x] = (byte) Math.round(bilinear(grey, sx, sy));
      }
    }
    return large;
  }

  private static double clamp(double v, double max) {
    return Math.max(0, Math.min(max, v));
  }

  private static double bilinear(GrayU8 grey, double x, double y) {
    int x0 = (int) x;
    int y0 = (int) y;
    int x1 = Math.min(x0 + 1, grey.width - 1);
    int y1 = Math.min(y0 + 1, grey.height - 1);
    double fx = x - x0;
    double fy = y - y0;
    return (1 - fy) * ((1 - fx) * grey.get(x0, y0) + fx * grey.get(x1, y0))
        + fy * ((1 - fx) * grey.get(x0, y1) + fx * grey.get(x1, y1));
  }
}
