// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Names the pictures of photos: the photo's path without its ending; where two photos would share a
 * name, both keep their ending behind a hyphen.
 */
final class PictureNames {
  /** File systems take 255 bytes; pictures put up to 16 behind the name. */
  private static final int LONGEST_BYTES = 230;

  private static final int BEGIN_LETTERS = 40;

  private final Map<String, Long> photosByStem;

  PictureNames(List<String> photos) {
    photosByStem =
        photos.stream().collect(Collectors.groupingBy(PictureNames::folded, Collectors.counting()));
  }

  /** Says whether the name without ending is the photo's alone. */
  boolean plain(String photo) {
    return photosByStem.getOrDefault(folded(photo), 1L) == 1;
  }

  /** Returns the name of a photo's pictures. */
  String of(String photo) {
    String stem = stem(photo);
    return plain(photo) || stem.length() == photo.length()
        ? shortened(stem)
        : shortened(stem + "-" + photo.substring(stem.length() + 1));
  }

  /** Cuts a file name so long that no ending goes behind it, and makes it single by its hash. */
  private static String shortened(String path) {
    int from = path.lastIndexOf('/') + 1;
    String name = path.substring(from);
    if (name.getBytes(StandardCharsets.UTF_8).length <= LONGEST_BYTES) {
      return path;
    }
    String begin =
        name.codePoints()
            .limit(BEGIN_LETTERS)
            .mapToObj(Character::toString)
            .collect(Collectors.joining());
    return path.substring(0, from) + begin + "-" + Digest.of(name).substring(0, 16);
  }

  /** Folds case, for file systems that do. */
  private static String folded(String photo) {
    return stem(photo).toLowerCase(Locale.ROOT);
  }

  private static String stem(String photo) {
    int dot = photo.lastIndexOf('.');
    return dot > photo.lastIndexOf('/') + 1 ? photo.substring(0, dot) : photo;
  }
}
