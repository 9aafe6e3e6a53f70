// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.OptionalInt;
import org.raftgauge.core.photo.PictureHeader.ByteRange;
import org.raftgauge.core.photo.PictureHeader.Format;

/**
 * Reads the headers of a JPEG file and checks that it reaches its end mark.
 *
 * <p>Source: ITU-T T.81 (1992), annex B. Decoders fill what is missing with grey and go on, so a
 * file without its end mark is refused here. A thumbnail's own end mark lies inside the Exif
 * segment and is stepped over with it; bytes after the end mark are allowed (some phones put a
 * second picture there).
 */
final class ReadJpegHeader {
  private static final int SOF2 = 0xc2;
  private static final int FRAME_BYTES_MIN = 10;
  private static final String EXIF = "Exif\0\0";

  private ReadJpegHeader() {}

  /** Reads the headers of a file that begins with a JPEG start mark. */
  static HeaderResult of(byte[] bytes) {
    JpegSegments segments = new JpegSegments(bytes);
    ByteRange exif = ByteRange.NONE;
    HeaderResult frame = UnreadablePhoto.damaged("the JPEG holds no picture");
    boolean frameSeen = false;
    boolean scanSeen = false;
    while (segments.next()) {
      int data = segments.data();
      if (segments.marker() == JpegSegments.EOI) {
        return scanSeen ? frame : UnreadablePhoto.damaged("the JPEG holds no picture");
      }
      if (segments.isFrame() && !frameSeen) {
        frame = frame(bytes, segments, exif);
        frameSeen = true;
      } else if (isExif(bytes, segments) && exif.length() == 0) {
        exif = new ByteRange(data + EXIF.length(), segments.end() - data - EXIF.length());
        frame = frame instanceof PictureHeader header ? header.withExif(exif) : frame;
      }
      scanSeen |= segments.marker() == JpegSegments.SOS;
    }
    return UnreadablePhoto.damaged(
        "the JPEG breaks off: " + bytes.length + " bytes without an end mark");
  }

  private static boolean isExif(byte[] bytes, JpegSegments segments) {
    return segments.marker() == JpegSegments.APP1
        && segments.end() - segments.data() > EXIF.length()
        && ReadHeader.startsWith(bytes, segments.data(), EXIF);
  }

  private static HeaderResult frame(byte[] bytes, JpegSegments segments, ByteRange exif) {
    int data = segments.data();
    if (segments.end() - segments.from() < FRAME_BYTES_MIN) {
      return UnreadablePhoto.damaged("the JPEG's picture header is broken");
    }
    if (segments.marker() > SOF2) {
      return UnreadablePhoto.unsupported("the JPEG is coded in a way that is not read");
    }
    int bits = bytes[data] & 0xff;
    if (bits != 8) {
      return UnreadablePhoto.unsupported("the JPEG has " + bits + " bits a channel, not 8");
    }
    int channels = bytes[data + 5] & 0xff;
    if (channels == 4) {
      return UnreadablePhoto.unsupported("the JPEG is in print colours (CMYK)");
    }
    if (channels != 1 && channels != 3) {
      return UnreadablePhoto.damaged("the JPEG claims " + channels + " colour channels");
    }
    return new PictureHeader(
        Format.JPEG,
        segments.twoBytes(data + 3),
        segments.twoBytes(data + 1),
        exif,
        OptionalInt.empty());
  }
}
