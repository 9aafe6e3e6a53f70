// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

/**
 * What a person at the station is told.
 *
 * @param kind whether there is something to do
 * @param word one to three words in capitals, readable from afar
 * @param advice what to do and why, to be read from near
 */
public record Signal(Kind kind, String word, String advice) {

  /** Whether there is something to do. */
  public enum Kind {
    /** A photo is being measured. */
    WAIT,
    /** The raft may go on. */
    GOOD,
    /** Do something while the raft is still there. */
    ACT
  }

  /** Returns the signal while a photo is measured. */
  public static Signal waiting(String photo) {
    return new Signal(Kind.WAIT, "WAIT", "measuring " + photo);
  }

  static Signal good(String advice) {
    return new Signal(Kind.GOOD, "GOOD", advice);
  }

  static Signal act(String word, String advice) {
    return new Signal(Kind.ACT, word, advice);
  }
}
