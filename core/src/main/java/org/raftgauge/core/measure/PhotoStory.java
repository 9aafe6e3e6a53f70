// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.photo.PhotoQuality;

/** What has been found out about a photo so far; turns into its measure at any point. */
record PhotoStory(
    String photo,
    String sha256,
    String station,
    Optional<OffsetDateTime> takenAt,
    String clockDoubt,
    Optional<PhotoQuality> quality) {

  static PhotoStory begin(String photo, String sha256) {
    return new PhotoStory(photo, sha256, "", Optional.empty(), "", Optional.empty());
  }

  PhotoStory at(String newStation) {
    return new PhotoStory(photo, sha256, newStation, takenAt, clockDoubt, quality);
  }

  PhotoStory taken(OffsetDateTime at, String doubt) {
    return new PhotoStory(photo, sha256, station, Optional.of(at), doubt, quality);
  }

  PhotoStory judged(PhotoQuality judged) {
    return new PhotoStory(photo, sha256, station, takenAt, clockDoubt, Optional.of(judged));
  }

  /** Ends without rafts. */
  PhotoMeasure end(PhotoStatus status, String reason, String remedy) {
    return measure(
        status, reason, remedy, new Found(List.of(), OptionalDouble.empty(), PhotoWitness.NONE));
  }

  PhotoMeasure measure(PhotoStatus status, String reason, String remedy, Found found) {
    return new PhotoMeasure(
        photo,
        sha256,
        station,
        takenAt,
        clockDoubt,
        status,
        reason,
        remedy,
        quality.isPresent() ? OptionalDouble.of(quality.get().sharpness()) : OptionalDouble.empty(),
        quality.isPresent()
            ? OptionalDouble.of(quality.get().exposureClippedFraction())
            : OptionalDouble.empty(),
        found.lightCast,
        found.rafts,
        found.witness);
  }

  /** The rafts found, how coloured the light on them is, 0..1, and what the photo says of it. */
  record Found(List<RaftMeasure> rafts, OptionalDouble lightCast, PhotoWitness witness) {}

  /** A photo's station and the evening it belongs to, once both are known. */
  record Scene(org.raftgauge.core.book.Station station, LocalDate evening, OffsetDateTime at) {}
}
