// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.measure.PhotoMeasure;

/** Makes measures from measures. */
final class Rows {

  private Rows() {}

  /** Returns a photo of which nothing but its name and hash is known. */
  static PhotoMeasure photo(String photo, String sha256, Say say) {
    return new PhotoMeasure(
        photo,
        sha256,
        "",
        Optional.empty(),
        "",
        say.status(),
        say.reason(),
        say.remedy(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of());
  }

  /** Returns a photo with another say. */
  static PhotoMeasure with(PhotoMeasure photo, Say say) {
    return photo.withSay(say.status(), say.reason(), say.remedy());
  }

  /** Joins two texts of which either may be empty, or stand in the other already. */
  static String joined(String text, String more) {
    if (text.isEmpty() || more.isEmpty()) {
      return text + more;
    }
    return text.contains(more) ? text : text + "; " + more;
  }
}
