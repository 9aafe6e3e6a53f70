// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.OffsetDateTime;

/**
 * When a photo was taken.
 *
 * @param at the farm's time, with the offset that holds there at that moment
 * @param source where it comes from
 * @param clockDoubt why it is doubted, or empty
 */
public record TakenAt(OffsetDateTime at, Source source, String clockDoubt) implements TimeResult {

  /** Where a time comes from. */
  public enum Source {
    /** The row of the manifest. */
    MANIFEST,
    /** The camera's clock, as the photo file has it. */
    CAMERA,
    /** The file's name. */
    FILE_NAME
  }
}
