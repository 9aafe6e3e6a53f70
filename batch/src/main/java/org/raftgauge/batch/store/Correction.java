// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.time.Duration;
import java.time.OffsetDateTime;

/**
 * What a person corrected; it is never changed, but another may undo it.
 *
 * @param number counted from 1; 0 for one that is not entered yet
 * @param entry who entered it, when and why
 * @param change what is corrected
 */
public record Correction(int number, Entry entry, Change change) {

  /**
   * Who, when and why.
   *
   * @param at when it was entered
   * @param by who, may be empty
   * @param reason why, not empty
   */
  public record Entry(OffsetDateTime at, String by, String reason) {}

  /** What is corrected. */
  public sealed interface Change permits Exclude, Move, Clock, Undo {

    /** Says it in words, after "correction N". */
    String words();
  }

  /**
   * A photo.
   *
   * @param sha256 of its bytes
   * @param name its path when the correction was entered
   */
  public record Photo(String sha256, String name) {}

  /**
   * A photo counts no more.
   *
   * @param photo which
   */
  public record Exclude(Photo photo) implements Change {
    @Override
    public String words() {
      return "excludes " + photo.name();
    }
  }

  /**
   * What a photo shows is another raft.
   *
   * @param photo which
   * @param raft the raft's id as measured; empty where nothing told it
   * @param toRaft the raft it is
   */
  public record Move(Photo photo, String raft, String toRaft) implements Change {
    @Override
    public String words() {
      String from = raft.isEmpty() ? "the unnamed raft" : "raft " + raft;
      return "moves " + from + " on " + photo.name() + " to raft " + toRaft;
    }
  }

  /**
   * A photo was taken at another time than its camera said.
   *
   * @param photo which
   * @param shift is added to its time
   */
  public record Clock(Photo photo, Duration shift) implements Change {
    @Override
    public String words() {
      return "shifts the time of " + photo.name() + " by " + ClockShift.text(shift);
    }
  }

  /**
   * An earlier correction holds no more.
   *
   * @param number which
   */
  public record Undo(int number) implements Change {
    @Override
    public String words() {
      return "undoes correction " + number;
    }
  }

  /** Says it in one line. */
  public String words() {
    String by = entry.by().isEmpty() ? "" : ", " + entry.by();
    return "correction "
        + number
        + " ("
        + entry.at().toLocalDate()
        + by
        + ") "
        + change.words()
        + ": "
        + entry.reason();
  }
}
