// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.util.List;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * What became of a photo once all photos of its rafts and evening are on the table.
 *
 * @param photo the photo with its final status, reason and remedy
 * @param rafts for each raft of the photo, in order, whether it counts
 */
public record Settled(PhotoMeasure photo, List<Outcome> rafts) {

  /** Copies the list. */
  public Settled {
    rafts = List.copyOf(rafts);
  }

  /**
   * Whether a raft of a photo counts.
   *
   * @param kind what became of it
   * @param why the reason, or empty where it counts
   */
  public record Outcome(Kind kind, String why) {}

  /** What became of a raft of a photo. */
  public enum Kind {
    /** It is the evening's measure of the raft. */
    COUNTS,
    /** A better photo of the same raft and evening counts. */
    REPLACED,
    /** Nobody can tell which raft it is. */
    HELD
  }
}
