// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.io.Serializable;
import java.util.Optional;
import org.raftgauge.core.measure.PhotoFacts;

/**
 * A photo to measure, as it travels to a task.
 *
 * @param uri where its bytes are
 * @param bytes size of its file
 * @param modifiedMs when the file was last changed, ms since 1970
 * @param facts what is known of it: path, and time, station, slot and raft of the manifest
 * @param earlierSha256 of the bytes that an earlier run measured under the same settings from
 *     another file of this path; empty where there was none
 */
public record Listed(String uri, long bytes, long modifiedMs, Facts facts, String earlierSha256)
    implements Serializable {

  /** Facts of a photo with empty texts for what is not known. */
  record Facts(String photo, String takenAt, String station, String slot, String raft)
      implements Serializable {

    static Facts of(PhotoFacts facts) {
      return new Facts(
          facts.photo(),
          facts.takenAt().orElse(""),
          facts.station().orElse(""),
          facts.slot().orElse(""),
          facts.raft().orElse(""));
    }

    PhotoFacts facts() {
      return new PhotoFacts(photo, known(takenAt), known(station), known(slot), known(raft));
    }

    private static Optional<String> known(String text) {
      return Optional.of(text).filter(t -> !t.isEmpty());
    }
  }

  /** Returns its path below the photo folder. */
  public String photo() {
    return facts.photo();
  }

  /** Returns the same with the bytes that an earlier run measured. */
  Listed afterAll(String sha256) {
    return new Listed(uri, bytes, modifiedMs, facts, sha256);
  }
}
