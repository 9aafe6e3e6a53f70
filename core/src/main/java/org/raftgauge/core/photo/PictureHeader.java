// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

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
