// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import boofcv.alg.fiducial.qrcode.QrCode;
import boofcv.alg.fiducial.qrcode.QrCodeEncoder;
import boofcv.alg.fiducial.qrcode.QrCodeGeneratorImage;
import boofcv.struct.image.GrayU8;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import org.raftgauge.core.opencv.DrawMarker;

/**
 * Makes the marks that {@link FindMarkers} and {@link FindTags} read, as cells to be printed.
 *
 * <p>Source: ISO/IEC 18004 as in BoofCV 1.1.7 for tags; the 36h11 dictionary of OpenCV 4.9 for
 * corner markers.
 */
public final class DrawMarks {
  /** White modules about a QR code, by ISO/IEC 18004. */
  public static final int TAG_QUIET_CELLS = 4;

  /**
   * White cells about a corner marker: one would do for the family, two are found more surely on
   * dark boards.
   */
  public static final int MARKER_QUIET_CELLS = 2;

  private static final int MARKER_CELLS = 8;
  private static final int MOST_ID = 32;

  private DrawMarks() {}

  /**
   * Encodes a raft's id as a QR code in the smallest version that holds it, error level M; letters
   * beyond ASCII as the bytes of UTF-8.
   *
   * @param raft the id, 1 to 32 characters
   * @return its modules
   */
  public static Cells tag(String raft) {
    if (raft.isBlank() || raft.length() > MOST_ID) {
      throw new IllegalArgumentException("a raft id has 1 to 32 characters, got " + raft.length());
    }
    QrCodeEncoder encoder = new QrCodeEncoder().setError(QrCode.ErrorLevel.M);
    boolean latin = raft.chars().allMatch(c -> c < 128);
    QrCode code =
        (latin
                ? encoder.addAutomatic(raft)
                : encoder.addBytes(raft.getBytes(StandardCharsets.UTF_8)))
            .fixate();
    QrCodeGeneratorImage generator = new QrCodeGeneratorImage(1);
    generator.setBorderModule(0);
    GrayU8 picture = generator.render(code).getGray();
    BitSet black = new BitSet();
    for (int i = 0; i < picture.width * picture.height; i++) {
      black.set(i, (picture.data[i] & 0xff) < 128);
    }
    return new Cells(picture.width, black);
  }

  /**
   * Returns a corner marker of the family 36h11.
   *
   * @param id its number, 0 to 586
   * @return its cells, with the black border
   */
  public static Cells marker(int id) {
    byte[] grey = DrawMarker.cells(id);
    BitSet black = new BitSet();
    for (int i = 0; i < grey.length; i++) {
      black.set(i, (grey[i] & 0xff) < 128);
    }
    return new Cells(MARKER_CELLS, black);
  }
}
