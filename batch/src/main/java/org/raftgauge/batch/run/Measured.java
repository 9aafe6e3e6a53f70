// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

/**
 * A photo after the first pass.
 *
 * @param measure what the measurement said, now or on an earlier run
 * @param settings hash of what besides its bytes the measure depends on
 * @param source where the measure is from
 * @param pictured whether its pictures are in the run folder
 * @param note what went wrong with its pictures, or empty
 */
record Measured(
    PhotoMeasure measure, String settings, Source source, boolean pictured, String note) {

  /** Where a measure is from. */
  enum Source {
    /** This run. */
    FRESH,
    /** The history. */
    HISTORY,
    /** Nowhere: the file could not be read or the program failed; to be tried again next time. */
    FAILED
  }

  /**
   * Refuses a photo whose clock is more than a day ahead: it belongs to no evening, and would be
   * taken for the latest. It is not kept, and tried again next time.
   *
   * @param now when the run began
   * @return the same, or the refusal
   */
  Measured notFromTheFuture(OffsetDateTime now) {
    Optional<OffsetDateTime> taken = measure.takenAt().filter(at -> at.isAfter(now.plusDays(1)));
    return taken.isEmpty()
        ? this
        : failed(
            measure.photo(),
            measure.sha256(),
            "the time " + taken.get() + " is in the future",
            "set the camera's clock, and give taken_at in manifest.csv");
  }

  /** Makes the row of a photo that could not be measured. */
  static Measured failed(String photo, String sha256, String reason, String remedy) {
    PhotoMeasure row = Rows.photo(photo, sha256, new Say(PhotoStatus.REFUSED, reason, remedy));
    return new Measured(row, "", Source.FAILED, false, "");
  }
}
