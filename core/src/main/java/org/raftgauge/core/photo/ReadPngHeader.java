// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;
import java.util.zip.CRC32;
import org.raftgauge.core.photo.PictureHeader.ByteRange;
import org.raftgauge.core.photo.PictureHeader.Format;

/**
 * Walks the chunks of a PNG file and checks the checksum of each that the picture needs.
 *
 * <p>Source: Portable Network Graphics Specification, 2nd and 3rd edition, W3C, section 5.
 */
final class ReadPngHeader {
  private static final int SIGNATURE_BYTES = 8;
  // Length and type before a chunk's data, checksum behind it.
  private static final int FRAME_BYTES = 12;
  private static final int IHDR_BYTES = 13;

  private ReadPngHeader() {}

  /** Reads the headers of a file that begins with the PNG signature. */
  static HeaderResult of(byte[] bytes) {
    ByteBuffer file = ByteBuffer.wrap(bytes);
    ByteRange exif = ByteRange.NONE;
    long packed = 0;
    int at = SIGNATURE_BYTES;
    while (true) {
      if (at > bytes.length - FRAME_BYTES) {
        return breaksOff(bytes);
      }
      int length = file.getInt(at);
      String type = new String(bytes, at + 4, 4, StandardCharsets.ISO_8859_1);
      if (length < 0 || length > bytes.length - FRAME_BYTES - at) {
        return breaksOff(bytes);
      }
      // An upper-case first letter marks a chunk that no decoder may do without.
      if (Character.isUpperCase(type.charAt(0)) && !checksumHolds(bytes, at, length)) {
        return UnreadablePhoto.damaged("the PNG is damaged: checksum wrong at byte " + at);
      }
      if ("eXIf".equals(type) && checksumHolds(bytes, at, length)) {
        exif = new ByteRange(at + 8, length);
      }
      packed += "IDAT".equals(type) ? length : 0;
      if ("IEND".equals(type)) {
        return header(bytes, exif, packed);
      }
      at += FRAME_BYTES + length;
    }
  }

  private static UnreadablePhoto breaksOff(byte[] bytes) {
    return UnreadablePhoto.damaged(
        "the PNG breaks off: " + bytes.length + " bytes without an end mark");
  }

  private static boolean checksumHolds(byte[] bytes, int at, int length) {
    CRC32 crc = new CRC32();
    crc.update(bytes, at + 4, 4 + length);
    return (int) crc.getValue() == ByteBuffer.wrap(bytes).getInt(at + 8 + length);
  }

  private static HeaderResult header(byte[] bytes, ByteRange exif, long packed) {
    ByteBuffer file = ByteBuffer.wrap(bytes);
    int at = SIGNATURE_BYTES;
    if (file.getInt(at) != IHDR_BYTES || !ReadHeader.startsWith(bytes, at + 4, "IHDR")) {
      return UnreadablePhoto.damaged("the PNG's picture header is broken");
    }
    PictureHeader header =
        new PictureHeader(
            Format.PNG,
            Integer.toUnsignedLong(file.getInt(at + 8)),
            Integer.toUnsignedLong(file.getInt(at + 12)),
            exif,
            OptionalInt.empty());
    return header.ifFilledBy(packed);
  }
}
