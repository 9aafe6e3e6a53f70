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
    double[] columns = new double[large.width];
    for (int x = 0; x < columns.length; x++) {
      columns[x] = clamp((x + 0.5) / factor - 0.5, grey.width - 1);
    }
    double[] upper = new double[large.width];
    double[] lower = new double[large.width];
    int row = -1;
    for (int y = 0; y < large.height; y++) {
      double sy = clamp((y + 0.5) / factor - 0.5, grey.height - 1);
      if (row != (int) sy) {
        row = (int) sy;
        along(grey, row, columns, upper);
        along(grey, Math.min(row + 1, grey.height - 1), columns, lower);
      }
      double fy = sy - row;
      for (int x = 0; x < large.width; x++) {
        // Levels are not negative: rounding is cutting off after a half is added.
        large.data[y * large.width + x] = (byte) ((1 - fy) * upper[x] + fy * lower[x] + 0.5);
      }
    }
    return large;
  }

  /** Reads a row at places along it. */
  private static void along(GrayU8 grey, int row, double[] columns, double[] levels) {
    int first = row * grey.width;
    for (int x = 0; x < levels.length; x++) {
      int left = (int) columns[x];
      int right = Math.min(left + 1, grey.width - 1);
      double fx = columns[x] - left;
      levels[x] =
          (1 - fx) * (grey.data[first + left] & 0xff) + fx * (grey.data[first + right] & 0xff);
    }
  }

  private static double clamp(double v, double max) {
    return Math.max(0, Math.min(max, v));
  }
}
