// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import boofcv.alg.fiducial.qrcode.QrCode;
import boofcv.alg.fiducial.qrcode.QrCodeEncoder;
import boofcv.alg.fiducial.qrcode.QrCodeGeneratorImage;
import boofcv.struct.image.GrayU8;
import java.util.BitSet;

/** A QR code as black and white modules. */
final class TagCode {
  private final int modules;
  private final BitSet black = new BitSet();

  /** Encodes a raft id, in the smallest version that holds it at error level M. */
  TagCode(String raft) {
    QrCode code = new QrCodeEncoder().setError(QrCode.ErrorLevel.M).addAutomatic(raft).fixate();
    QrCodeGeneratorImage generator = new QrCodeGeneratorImage(1);
    generator.setBorderModule(0);
    GrayU8 picture = generator.render(code).getGray();
    modules = picture.width;
    for (int y = 0; y < modules; y++) {
      for (int x = 0; x < modules; x++) {
        black.set(y * modules + x, picture.get(x, y) < 128);
      }
    }
  }

  /** Returns the number of modules a side. */
  int modules() {
    return modules;
  }

  /** Says whether a place is black; x and y 0..1 from the top left. */
  boolean black(double x, double y) {
    int column = (int) Math.min(modules - 1, x * modules);
    int row = (int) Math.min(modules - 1, y * modules);
    return black.get(row * modules + column);
  }
}
