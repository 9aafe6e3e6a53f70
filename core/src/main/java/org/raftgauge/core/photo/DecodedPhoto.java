// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Optional;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A photo as pixels, upright, with what its file says of how it was taken.
 *
 * @param image the picture, turned upright by its orientation tag, averaged where that was asked
 * @param fine all its pixels, where the picture was averaged
 * @param tags what the file's Exif block says
 */
public record DecodedPhoto(RgbImage image, Optional<FinePhoto> fine, PhotoTags tags)
    implements DecodeResult {

  /**
   * Returns the same photo in all its pixels; this one's fine pixels must not be asked afterwards.
   *
   * @throws java.util.NoSuchElementException if this one was not averaged
   */
  public DecodedPhoto closer() {
    return DecodePhoto.photo(fine.orElseThrow().stored(), tags, 1);
  }
}
