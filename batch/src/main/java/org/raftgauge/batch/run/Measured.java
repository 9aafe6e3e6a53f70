// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

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
public record Measured(
    PhotoMeasure measure, String settings, Source source, boolean pictured, String note) {

  /** Where a measure is from. */
  public enum Source {
    /** This run. */
    FRESH,
    /** The history. */
    HISTORY,
    /** Nowhere: the file could not be read or the program failed; to be tried again next time. */
    FAILED
  }

  /**
   * Makes the row of a photo that could not be measured.
   *
   * @param photo its path below the photo folder
   * @param sha256 of its bytes, or empty where they could not be read
   * @param reason why
   * @param remedy what to do
   * @return its outcome
   */
  public static Measured failed(String photo, String sha256, String reason, String remedy) {
    PhotoMeasure row = Rows.photo(photo, sha256, new Say(PhotoStatus.REFUSED, reason, remedy));
    return new Measured(row, "", Source.FAILED, false, "");
  }

  /** Makes the row of a photo on which the program failed. */
  static Measured crashed(String photo, String sha256, Throwable failure) {
    if (failure instanceof OutOfMemoryError) {
      return failed(
          photo,
          sha256,
          "the memory ran out on this photo",
          "run again with --workers 1; if it fails again, set the camera to fewer megapixels, or"
              + " use a computer with more memory");
    }
    return failed(
        photo,
        sha256,
        "the program failed on this photo: " + failure,
        "run again; if it fails again, take the photo again and report this line");
  }
}
