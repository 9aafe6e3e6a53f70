// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import boofcv.alg.fiducial.qrcode.QrCode;
import boofcv.alg.fiducial.qrcode.QrCodeEncoder;
import boofcv.alg.fiducial.qrcode.QrCodeGeneratorImage;
import boofcv.struct.image.GrayU8;

/** Draws the modules of QR codes for tests. */
public final class QrCells {

  private QrCells() {}

  /** Returns whether each module is white, row by row, without the quiet zone. */
  public static boolean[][] of(String text) {
    QrCode code = new QrCodeEncoder().addAutomatic(text).fixate();
    QrCodeGeneratorImage generator = new QrCodeGeneratorImage(1);
    generator.setBorderModule(0);
    generator.render(code);
    GrayU8 grey = generator.getGray();
    boolean[][] white = new boolean[grey.height][grey.width];
    for (int y = 0; y < grey.height; y++) {
      for (int x = 0; x < grey.width; x++) {
        white[y][x] = grey.get(x, y) > 127;
      }
    }
    return white;
  }
}
