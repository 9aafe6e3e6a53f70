// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Optional;

/**
 * What a photo file's Exif block says of how the photo was taken.
 *
 * @param orientation how the stored picture must be turned to stand upright, 1 to 8 as in Exif tag
 *     0x0112; 1 where the file does not say
 * @param takenAt DateTimeOriginal as written, {@code 2026:03:01 18:20:00}; never blank
 * @param utcOffset OffsetTimeOriginal as written, {@code +01:00}; never blank
 * @param cameraMake maker of the camera; never blank
 * @param cameraModel model of the camera; never blank
 */
public record PhotoTags(
    int orientation,
    Optional<String> takenAt,
    Optional<String> utcOffset,
    Optional<String> cameraMake,
    Optional<String> cameraModel) {

  /** The tags of a file without an Exif block. */
  public static final PhotoTags NONE =
      new PhotoTags(1, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  /** Checks the orientation. */
  public PhotoTags {
    if (orientation < 1 || orientation > 8) {
      throw new IllegalArgumentException("orientation must be 1 to 8, got " + orientation);
    }
  }
}
