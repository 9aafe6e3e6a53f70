// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.raftgauge.core.pixels.RgbImage;

/** A PDF "printed" to pixels; a printer that shrinks is one with fewer dots an inch. */
final class Printed implements AutoCloseable {
  static final double MM_PER_INCH = 25.4;

  private final PDDocument document;
  private final double dpi;

  Printed(Path file, double dpi) throws IOException {
    this.document = Loader.loadPDF(file.toFile());
    this.dpi = dpi;
  }

  int pages() {
    return document.getNumberOfPages();
  }

  BufferedImage picture(int page) throws IOException {
    return new PDFRenderer(document).renderImageWithDPI(page, (float) dpi, ImageType.RGB);
  }

  static RgbImage rgb(BufferedImage picture) {
    int w = picture.getWidth();
    int h = picture.getHeight();
    byte[] rgb = new byte[3 * w * h];
    int[] row = new int[w];
    for (int y = 0; y < h; y++) {
      picture.getRGB(0, y, w, 1, row, 0, w);
      for (int x = 0; x < w; x++) {
        rgb[3 * (y * w + x)] = (byte) (row[x] >> 16);
        rgb[3 * (y * w + x) + 1] = (byte) (row[x] >> 8);
        rgb[3 * (y * w + x) + 2] = (byte) row[x];
      }
    }
    return RgbImage.of(w, h, rgb);
  }

  /**
   * Measures a page's check line as a person with a rule would who takes the print for true: the
   * white between its two end strokes, on a line 1 mm above the thick one.
   */
  static double checkLineMm(BufferedImage picture, double believedDpi) {
    int y = (int) Math.round(picture.getHeight() - (15 + 1) / MM_PER_INCH * believedDpi);
    int best = 0;
    int from = -1;
    for (int x = 0; x < picture.getWidth(); x++) {
      boolean black = (picture.getRGB(x, y) & 0xff) < 200;
      if (black) {
        best = from >= 0 ? Math.max(best, x - from - 1) : best;
        from = x;
      }
    }
    return best / believedDpi * MM_PER_INCH;
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
