// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.Locale;
import org.raftgauge.core.track.Verdict;

/** How a verdict is shown: a shape and a letter first, a colour last. */
public enum Mark {
  /** In doubt. */
  HELD("H", "held: photo, place or light in doubt", 2),
  /** Collapsed. */
  DEAD("D", "dead: canopy collapsed or brown", 7),
  /** Planted and bare. */
  EMPTY("E", "empty: planted, nothing grows", 6),
  /** Stopped. */
  STALLED("S", "stalled: has all but stopped growing", 5),
  /** Small. */
  LAGGING("L", "lagging: smaller than the crop's limit allows", 4),
  /** Pale. */
  PALE("P", "pale: leaf colour paler than the cohort's", 3),
  /** Large. */
  AHEAD("A", "ahead: larger than the crop's limit", 1),
  /** As expected. */
  ON_TRACK("O", "on track", 0),
  /** Measured, nothing to hold it against. */
  NONE("–", "measured, not judged", 0);

  private final String letter;
  private final String meaning;
  private final int weight;

  Mark(String letter, String meaning, int weight) {
    this.letter = letter;
    this.meaning = meaning;
    this.weight = weight;
  }

  /**
   * Returns the mark of a verdict.
   *
   * @param verdict any
   */
  public static Mark of(Verdict verdict) {
    return switch (verdict) {
      case HELD -> HELD;
      case DEAD -> DEAD;
      case EMPTY -> EMPTY;
      case STALLED -> STALLED;
      case LAGGING -> LAGGING;
      case PALE -> PALE;
      case AHEAD -> AHEAD;
      case ON_TRACK -> ON_TRACK;
    };
  }

  /** Returns the name used in the page's style and anchors, such as {@code on-track}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Returns its letter. */
  public String letter() {
    return letter;
  }

  /** Returns the verdict in a word or two. */
  public String word() {
    return this == NONE ? "not judged" : key().replace('-', ' ');
  }

  /** Returns what it means. */
  public String meaning() {
    return meaning;
  }

  /** Returns how urgent it is, 0 for nothing to do. */
  public int weight() {
    return weight;
  }

  /** Says whether a person should look at the site: all but held ones, which need a photo. */
  public boolean toLookAt() {
    return weight > 0 && this != HELD;
  }
}
