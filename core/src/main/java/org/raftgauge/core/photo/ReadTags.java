// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.util.Arrays;
import java.util.Optional;
import org.raftgauge.core.photo.PictureHeader.ByteRange;

/** Reads the few Exif tags that matter. Source of tags: Exif 2.32 (CIPA DC-008), section 4.6. */
final class ReadTags {

  private ReadTags() {}

  /**
   * Reads the tags of a file.
   *
   * @param bytes the whole file
   * @param exif where its Exif block lies
   * @return its tags; {@link PhotoTags#NONE} where there is no block or it cannot be read
   */
  static PhotoTags of(byte[] bytes, ByteRange exif) {
    if (exif.length() == 0) {
      return PhotoTags.NONE;
    }
    byte[] block = Arrays.copyOfRange(bytes, exif.from(), exif.from() + exif.length());
    Metadata metadata = new Metadata();
    new ExifReader().extract(new ByteArrayReader(block), metadata);
    Optional<Directory> main =
        Optional.ofNullable(metadata.getFirstDirectoryOfType(ExifIFD0Directory.class));
    Optional<Directory> shot =
        Optional.ofNullable(metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class));
    return new PhotoTags(
        main.map(ReadTags::orientation).orElse(1),
        text(shot, ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL),
        text(shot, ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL),
        text(main, ExifIFD0Directory.TAG_MAKE),
        text(main, ExifIFD0Directory.TAG_MODEL));
  }

  private static int orientation(Directory main) {
    Integer value = main.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
    return value == null || value < 1 || value > 8 ? 1 : value;
  }

  private static Optional<String> text(Optional<Directory> directory, int tag) {
    // Cameras fill unused text with zero bytes or blanks.
    return directory
        .map(d -> d.getString(tag))
        .map(text -> text.replace('\0', ' ').strip())
        .filter(text -> !text.isEmpty());
  }
}
