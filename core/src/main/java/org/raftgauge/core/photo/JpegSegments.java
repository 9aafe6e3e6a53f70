// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * Steps through the segments of a JPEG file, from the start mark to the end mark.
 *
 * <p>Source: ITU-T T.81 (1992), annex B.1.1. Coded picture data lie between segments and hold no
 * markers but restarts; they are stepped over.
 */
final class JpegSegments {
  static final int SOI = 0xd8;
  static final int EOI = 0xd9;
  static final int SOS = 0xda;
  static final int APP0 = 0xe0;
  static final int APP1 = 0xe1;
  static final int APP14 = 0xee;
  static final int APP15 = 0xef;
  static final int COM = 0xfe;
  private static final int TEM = 0x01;
  private static final int SOF0 = 0xc0;
  private static final int SOF15 = 0xcf;
  private static final int DHT = 0xc4;
  private static final int JPG = 0xc8;
  private static final int DAC = 0xcc;
  private static final int RST0 = 0xd0;
  private static final int RST7 = 0xd7;

  private final byte[] bytes;
  private int marker = SOI;
  private int from;
  private int end = 2;

  /**
   * Stands on the start mark.
   *
   * @param bytes a file that begins with a JPEG start mark; not changed
   */
  JpegSegments(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Moves to the next segment; false where the file ends before or inside it. */
  boolean next() {
    int at = end;
    while (at + 1 < bytes.length && !isMarker(at)) {
      at++;
    }
    if (at + 1 >= bytes.length) {
      return false;
    }
    from = at;
    marker = bytes[at + 1] & 0xff;
    end = at + 2;
    if (marker == EOI || marker == SOI) {
      return true;
    }
    if (end + 2 > bytes.length) {
      return false;
    }
    int length = twoBytes(end);
    end += length;
    return length >= 2 && end <= bytes.length;
  }

  private boolean isMarker(int at) {
    if (bytes[at] != (byte) 0xff) {
      return false;
    }
    int code = bytes[at + 1] & 0xff;
    return code != 0 && code != 0xff && code != TEM && (code < RST0 || code > RST7);
  }

  /** Returns the code of the marker stood on. */
  int marker() {
    return marker;
  }

  /** Returns the index of the marker's first byte. */
  int from() {
    return from;
  }

  /** Returns the index of the segment's payload, behind marker and length. */
  int data() {
    return from + 4;
  }

  /** Returns the index behind the segment. */
  int end() {
    return end;
  }

  /** Tells whether the segment is a frame header: size, channels and process of the picture. */
  boolean isFrame() {
    return marker >= SOF0 && marker <= SOF15 && marker != DHT && marker != JPG && marker != DAC;
  }

  /** Tells whether the segment describes the picture without being needed to decode it. */
  boolean isRemark() {
    return marker == COM || (marker >= APP0 && marker <= APP15);
  }

  /** Returns two bytes as a number. */
  int twoBytes(int index) {
    return (bytes[index] & 0xff) << 8 | (bytes[index + 1] & 0xff);
  }
}
