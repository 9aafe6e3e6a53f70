// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

/**
 * A row that does not fit the others, or looks mistyped. It stays in the fit until a person settles
 * it.
 *
 * @param row which row, as its owner names it
 * @param column which number of it is doubted
 * @param kind what it looks like
 * @param why in words, with what to check
 */
public record Suspect(String row, String column, Kind kind, String why) {

  /** What a suspect looks like. */
  public enum Kind {
    /** Ten or a hundred times too much or too little. */
    SLIPPED_DECIMAL,
    /** It fits another row's plant, and that row fits this one's. */
    SWAPPED,
    /** The same number as another row's, where numbers do not repeat by chance. */
    SHARED_VALUE,
    /** Far from the rest, for a reason that the numbers do not tell. */
    OUT_OF_LINE
  }

  /** Says all of it in one line. */
  public String words() {
    return row + ", " + column + ": " + why;
  }
}
