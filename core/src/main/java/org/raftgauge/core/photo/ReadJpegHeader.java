// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.OptionalInt;
import org.raftgauge.core.photo.PictureHeader.ByteRange;
import org.raftgauge.core.photo.PictureHeader.Format;

/**
 * Walks the markers of a JPEG file from start to end mark.
 *
 * <p>Source: ITU-T T.81 (1992), annex B. Decoders fill what is missing with grey and say nothing,
 * so a file without its end mark is refused here. A thumbnail's own end mark lies inside the Exif
 * segment and is stepped over with it; bytes after the end mark are allowed (some phones put a
 * second picture there).
 */
final class ReadJpegHeader {
  private static final int TEM = 0x01;
  private static final int SOF0 = 0xc0;
  private static final int SOF2 = 0xc2;
  private static final int DHT = 0xc4;
  private static final int JPG = 0xc8;
  private static final int DAC = 0xcc;
  private static final int SOF15 = 0xcf;
  private static final int RST0 = 0xd0;
  private static final int RST7 = 0xd7;
  private static final int SOI = 0xd8;
  private static final int EOI = 0xd9;
  private static final int SOS = 0xda;
  private static final int APP1 = 0xe1;
  private static final String EXIF = "Exif\0\0";

  private final byte[] bytes;
  private int at = 2;
  private int frameAt;
  private int frameMarker;
  private ByteRange exif = ByteRange.NONE;
  private boolean scanSeen;

  private ReadJpegHeader(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Reads the headers of a file that begins with a JPEG start mark. */
  static HeaderResult of(byte[] bytes) {
    return new ReadJpegHeader(bytes).walk();
  }

  private HeaderResult walk() {
    int marker = nextMarker();
    while (marker != EOI) {
      if (marker < 0 || !step(marker)) {
        return UnreadablePhoto.damaged(
            "the JPEG breaks off: " + bytes.length + " bytes without an end mark");
      }
      marker = nextMarker();
    }
    if (frameAt == 0 || !scanSeen) {
      return UnreadablePhoto.damaged("the JPEG holds no picture");
    }
    return frame();
  }

  /** Moves behind the next marker and returns its code, or -1 at the end of the file. */
  private int nextMarker() {
    while (at + 1 < bytes.length) {
      int code = bytes[at + 1] & 0xff;
      if (bytes[at] == (byte) 0xff && code != 0 && code != 0xff) {
        at += 2;
        return code;
      }
      at++;
    }
    return -1;
  }

  /** Moves behind a marker's segment; false where the file ends inside it. */
  private boolean step(int marker) {
    if (marker == TEM || marker == SOI || (marker >= RST0 && marker <= RST7)) {
      return true;
    }
    if (at + 2 > bytes.length || at + twoBytes(at) > bytes.length || twoBytes(at) < 2) {
      return false;
    }
    if (isFrame(marker) && frameAt == 0) {
      frameAt = at;
      frameMarker = marker;
    } else if (marker == APP1 && ReadHeader.startsWith(bytes, at + 2, EXIF)) {
      int from = at + 2 + EXIF.length();
      exif = exif.length() > 0 ? exif : new ByteRange(from, Math.max(0, at + twoBytes(at) - from));
    }
    scanSeen |= marker == SOS;
    at += twoBytes(at);
    return true;
  }

  private static boolean isFrame(int marker) {
    return marker >= SOF0 && marker <= SOF15 && marker != DHT && marker != JPG && marker != DAC;
  }

  private int twoBytes(int index) {
    return (bytes[index] & 0xff) << 8 | (bytes[index + 1] & 0xff);
  }

  private HeaderResult frame() {
    if (twoBytes(frameAt) < 8) {
      return UnreadablePhoto.damaged("the JPEG's picture header is broken");
    }
    if (frameMarker > SOF2) {
      return UnreadablePhoto.unsupported("the JPEG is coded in a way that is not read");
    }
    int bits = bytes[frameAt + 2] & 0xff;
    if (bits != 8) {
      return UnreadablePhoto.unsupported("the JPEG has " + bits + " bits a channel, not 8");
    }
    int channels = bytes[frameAt + 7] & 0xff;
    if (channels == 4) {
      return UnreadablePhoto.unsupported("the JPEG is in print colours (CMYK)");
    }
    if (channels != 1 && channels != 3) {
      return UnreadablePhoto.damaged("the JPEG claims " + channels + " colour channels");
    }
    return new PictureHeader(
        Format.JPEG, twoBytes(frameAt + 5), twoBytes(frameAt + 3), exif, OptionalInt.empty());
  }
}
