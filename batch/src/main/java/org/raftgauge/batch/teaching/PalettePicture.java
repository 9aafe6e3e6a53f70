// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.batch.page.PngFile;
import org.raftgauge.core.pixels.RgbImage;

/** Writes pictures without loss, as PNG. */
final class PalettePicture {

  private PalettePicture() {}

  static void write(RgbImage picture, Path file) throws IOException {
    int width = picture.width();
    BufferedImage image = new BufferedImage(width, picture.height(), BufferedImage.TYPE_INT_RGB);
    byte[] rgb = picture.rgb();
    int[] row = new int[width];
    for (int y = 0; y < picture.height(); y++) {
      for (int x = 0; x < width; x++) {
        int at = 3 * (y * width + x);
        row[x] = (rgb[at] & 0xff) << 16 | (rgb[at + 1] & 0xff) << 8 | (rgb[at + 2] & 0xff);
      }
      image.setRGB(0, y, width, 1, row, 0, width);
    }
    PngFile.write(image, file);
  }
}
