// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.nio.charset.StandardCharsets;

/** Tells what kind of picture a file holds, and whether it is whole, without decoding it. */
final class ReadHeader {

  private ReadHeader() {}

  /**
   * Reads the headers of a picture file of any name.
   *
   * @param bytes the whole file
   * @return its size and where its Exif block lies, or why it cannot be read
   */
  static HeaderResult of(byte[] bytes) {
    if (bytes.length == 0) {
      return UnreadablePhoto.damaged("the file is empty (0 bytes)");
    }
    if (startsWith(bytes, 0, "\u00ff\u00d8\u00ff")) {
      return ReadJpegHeader.of(bytes);
    }
    if (startsWith(bytes, 0, "\u0089PNG\r\n\u001a\n")) {
      return ReadPngHeader.of(bytes);
    }
    if (startsWith(bytes, 0, "II*\0") || startsWith(bytes, 0, "MM\0*")) {
      return ReadTiffHeader.of(bytes);
    }
    return notRead(bytes);
  }

  /** Tells whether the Latin-1 bytes of a text lie at an index. */
  static boolean startsWith(byte[] bytes, int at, String text) {
    byte[] wanted = text.getBytes(StandardCharsets.ISO_8859_1);
    if (at < 0 || at > bytes.length - wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if (bytes[at + i] != wanted[i]) {
        return false;
      }
    }
    return true;
  }

  private static UnreadablePhoto notRead(byte[] bytes) {
    if (startsWith(bytes, 4, "ftyp")) {
      return UnreadablePhoto.unsupported("the file is a HEIC picture or a film, which is not read");
    }
    if (startsWith(bytes, 0, "RIFF") && startsWith(bytes, 8, "WEBP")) {
      return UnreadablePhoto.unsupported("the file is a WebP picture, which is not read");
    }
    if (startsWith(bytes, 0, "II+\0") || startsWith(bytes, 0, "MM\0+")) {
      return UnreadablePhoto.unsupported("the file is a BigTIFF picture, which is not read");
    }
    if (allZero(bytes)) {
      return UnreadablePhoto.damaged("the file holds nothing but zero bytes");
    }
    return UnreadablePhoto.unsupported("the file is not a JPEG, PNG or TIFF picture");
  }

  private static boolean allZero(byte[] bytes) {
    for (byte b : bytes) {
      if (b != 0) {
        return false;
      }
    }
    return true;
  }
}
