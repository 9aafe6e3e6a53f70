// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Optional;

/** Looks at a photo file's headers without decoding the picture. */
public final class PeekPhoto {
  /** Exif orientations from this one on swap width and height. */
  private static final int FIRST_TURNED = 5;

  private PeekPhoto() {}

  /**
   * Looks at the headers of a file.
   *
   * @param bytes the whole file, any content; not changed
   * @return its size and tags, or why {@link DecodePhoto} would refuse it, as far as that shows
   *     without decoding
   */
  public static PeekResult at(byte[] bytes) {
    HeaderResult result = ReadHeader.of(bytes);
    if (result instanceof UnreadablePhoto unreadable) {
      return unreadable;
    }
    PictureHeader header = (PictureHeader) result;
    Optional<UnreadablePhoto> wrongSize = DecodePhoto.wrongSize(header);
    if (wrongSize.isPresent()) {
      return wrongSize.get();
    }
    PhotoTags tags = ReadTags.of(bytes, header.exif());
    boolean turned = tags.orientation() >= FIRST_TURNED;
    return new PeekedPhoto(
        turned ? header.height() : header.width(), turned ? header.width() : header.height(), tags);
  }
}
