// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

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
        photo.rafts());
  }

  /** Returns a raft with its numbers held back. */
  static RaftMeasure held(RaftMeasure raft, String why) {
    return new RaftMeasure(
        raft.raft(),
        raft.slot(),
        raft.layout(),
        raft.poseSource(),
        raft.poseErrorMm(),
        raft.mmPerPx(),
        raft.cameraHeightMm(),
        raft.halfTurnKnown(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        raft.sites().stream().map(s -> held(s, why)).toList(),
        raft.quality(),
        why);
  }

  private static SiteMeasure held(SiteMeasure site, String why) {
    return new SiteMeasure(
        site.site(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        0,
        site.heightMm(),
        site.parallaxFactor(),
        List.of(),
        List.of(),
        site.quality(),
        why);
  }
}
