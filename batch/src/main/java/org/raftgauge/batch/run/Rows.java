// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;

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
    return copy(photo, say, photo.rafts());
  }

  /** Returns a photo with its rafts settled. */
  static PhotoMeasure withRafts(PhotoMeasure photo, List<RaftMeasure> rafts) {
    return copy(photo, new Say(photo.status(), photo.reason(), photo.remedy()), rafts);
  }

  private static PhotoMeasure copy(PhotoMeasure photo, Say say, List<RaftMeasure> rafts) {
    return new PhotoMeasure(
        photo.photo(),
        photo.sha256(),
        photo.station(),
        photo.takenAt(),
        photo.clockDoubt(),
        say.status(),
        say.reason(),
        say.remedy(),
        photo.sharpness(),
        photo.exposureClippedFraction(),
        photo.lightCast(),
        rafts,
        photo.witness());
  }

  /** Joins two texts of which either may be empty, or stand in the other already. */
  static String joined(String text, String more) {
    if (text.isEmpty() || more.isEmpty()) {
      return text + more;
    }
    return text.contains(more) ? text : text + "; " + more;
  }
}
