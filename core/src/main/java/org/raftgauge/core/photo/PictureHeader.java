// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * What a picture file says of itself before anything is decoded.
 *
 * @param format the kind of file
 * @param width stored width, px
 * @param height stored height, px
 * @param exif where its Exif block lies, from the TIFF byte-order mark on; empty where there is
 *     none
 * @param orientationAt in a TIFF file, the index of the first byte of the orientation's value
 */
record PictureHeader(
    Format format, long width, long height, ByteRange exif, OptionalInt orientationAt)
    implements HeaderResult {
  /** Bytes of a pixel of the deepest picture read: 16 bits of four channels. */
  private static final double DEEPEST_BYTES = 8;

  /** Bytes over that which rows, tiles and packing of noise may take; working value. */
  private static final double SLACK_BYTES = 1 << 16;

  /**
   * Returns the header, or a refusal where the file holds more packed data than such a picture can
   * need: it unfolds to something else than it says, or was made to fill a decoder's memory.
   *
   * @param packedBytes of pixels, as they lie in the file
   */
  HeaderResult ifFilledBy(long packedBytes) {
    if (packedBytes <= DEEPEST_BYTES * width * height + SLACK_BYTES) {
      return this;
    }
    return UnreadablePhoto.damaged(
        String.format(
            Locale.ROOT,
            "the %s holds %.1f MB of packed pixels, more than a picture of %d x %d px can need",
            format,
            packedBytes / 1e6,
            width,
            height));
  }

  /** Returns the same header with an Exif block. */
  PictureHeader withExif(ByteRange found) {
    return new PictureHeader(format, width, height, found, orientationAt);
  }

  /** The kinds of file that are read. */
  enum Format {
    JPEG,
    PNG,
    TIFF
  }

  /**
   * A stretch of a file.
   *
   * @param from index of the first byte
   * @param length number of bytes, at least 0
   */
  record ByteRange(int from, int length) {
    static final ByteRange NONE = new ByteRange(0, 0);
  }
}
