// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.OffsetDateTime;

/**
 * That a photo showed a raft.
 *
 * @param photo the photo
 * @param station where it was taken; empty where unknown
 * @param raft the raft
 * @param takenAt when
 * @param held why nothing is said of the raft; empty where it is not held
 * @param tag what became of its tag
 * @param doubt what speaks against it though it counts, such as another photo of the evening; empty
 *     where nothing does
 */
public record RaftLook(
    String photo,
    String station,
    String raft,
    OffsetDateTime takenAt,
    String held,
    Tag tag,
    String doubt) {

  /**
   * Says that a photo showed a raft, and nothing speaks against it.
   *
   * @param photo the photo
   * @param station where it was taken
   * @param raft the raft
   * @param takenAt when
   * @param held why nothing is said of the raft, or empty
   * @param tag what became of its tag
   */
  public RaftLook(
      String photo, String station, String raft, OffsetDateTime takenAt, String held, Tag tag) {
    this(photo, station, raft, takenAt, held, tag, "");
  }

  /** What became of a raft's tag. */
  public enum Tag {
    /** Read, or there is none, or it was not looked for. */
    FINE,
    /** The board has one, and it could not be read. */
    UNREAD
  }
}
