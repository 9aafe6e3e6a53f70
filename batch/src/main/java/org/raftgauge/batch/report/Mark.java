// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Locale;
import org.raftgauge.core.track.Verdict;

/** How a verdict is shown: a shape and a letter first, a colour last. */
public enum Mark {
  /** In doubt. */
  HELD("H", "held: photo, place or light in doubt", 2, Shapes.HEXAGON),
  /** Collapsed. */
  DEAD("D", "dead: canopy collapsed or brown", 7, Shapes.OCTAGON),
  /** Planted and bare. */
  EMPTY("E", "empty: planted, nothing grows", 6, Shapes.CIRCLE),
  /** Stopped. */
  STALLED("S", "stalled: has all but stopped growing", 5, Shapes.SQUARE),
  /** Small. */
  LAGGING("L", "lagging: smaller than the crop's limit allows", 4, Shapes.DOWN),
  /** Pale. */
  PALE("P", "pale: leaf colour paler than the cohort's", 3, Shapes.DIAMOND),
  /** Large. */
  AHEAD("A", "ahead: larger than the crop's limit", 1, Shapes.UP),
  /** As expected. */
  ON_TRACK("O", "on track", 0, Shapes.CIRCLE),
  /** Not known yet. */
  NOT_TOLD(
      "?",
      "cannot be told yet: nothing to compare with, or what is known spans lagging to ahead",
      0,
      Shapes.PENTAGON),
  /** Nothing was amiss when it was last seen, before this evening. */
  NOT_SEEN("U", "unseen this evening: how it stands now is not known", 0, Shapes.BAR),
  /** Measured, nothing to hold it against. */
  NONE("–", "measured, not judged", 0, Shapes.DOT),
  /** Seen while it stood; nothing is planted there now. */
  ENDED("X", "ended: harvested or cleared since the photo", 0, Shapes.HOUSE);

  private final String letter;
  private final String meaning;
  private final int weight;

  private final String shape;

  /** Corners as x, y about the middle of a square of side 2; a single number is a radius. */
  private static final class Shapes {
    private static final String CIRCLE = "0.95";
    private static final String DOT = "0.7";
    private static final String HEXAGON = "-0.5 -0.87 0.5 -0.87 1 0 0.5 0.87 -0.5 0.87 -1 0";
    private static final String OCTAGON =
        "-0.4 -0.95 0.4 -0.95 0.95 -0.4 0.95 0.4 0.4 0.95 -0.4 0.95 -0.95 0.4 -0.95 -0.4";
    private static final String SQUARE = "-0.87 -0.87 0.87 -0.87 0.87 0.87 -0.87 0.87";
    private static final String DIAMOND = "0 -1 1 0 0 1 -1 0";
    private static final String DOWN = "-1 -0.85 1 -0.85 0 0.98";
    private static final String HOUSE = "0 -1 0.9 -0.25 0.9 0.9 -0.9 0.9 -0.9 -0.25";
    private static final String PENTAGON = "0 -1 0.95 -0.31 0.59 0.81 -0.59 0.81 -0.95 -0.31";
    private static final String BAR = "-1 -0.6 1 -0.6 1 0.6 -1 0.6";
    private static final String UP = "0 -0.98 1 0.85 -1 0.85";
  }

  Mark(String letter, String meaning, int weight, String shape) {
    this.letter = letter;
    this.meaning = meaning;
    this.weight = weight;
    this.shape = shape;
  }

  /**
   * Draws its shape.
   *
   * @param x the middle
   * @param y the middle
   * @param half half its size
   * @return SVG path data, 1 decimal
   */
  public String path(double x, double y, double half) {
    double[] at = Arrays.stream(shape.split(" ")).mapToDouble(Double::parseDouble).toArray();
    if (at.length == 1) {
      double r = half * at[0];
      String arc = "a" + n(r) + " " + n(r) + " 0 1 0 ";
      return "M" + n(x - r) + " " + n(y) + arc + n(2 * r) + " 0" + arc + n(-2 * r) + " 0z";
    }
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < at.length; i += 2) {
      path.append(i == 0 ? "M" : "L").append(n(x + half * at[i])).append(' ');
      path.append(n(y + half * at[i + 1]));
    }
    return path.append('z').toString();
  }

  /** Returns by how much of its half size its letter's middle is under its own. */
  public double drop() {
    return switch (this) {
      case LAGGING -> -0.25;
      case AHEAD -> 0.25;
      case HELD, DEAD, EMPTY, STALLED, PALE, ON_TRACK, NOT_TOLD, NOT_SEEN, NONE, ENDED -> 0;
    };
  }

  private static String n(double value) {
    return BigDecimal.valueOf(value)
        .setScale(1, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
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
      case NOT_TOLD -> NOT_TOLD;
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
    return switch (this) {
      case NONE -> "not judged";
      case NOT_TOLD -> "cannot be told yet";
      case NOT_SEEN -> "not seen this evening";
      case HELD, DEAD, EMPTY, STALLED, LAGGING, PALE, AHEAD, ON_TRACK, ENDED ->
          key().replace('-', ' ');
    };
  }

  /** Returns what it means. */
  public String meaning() {
    return meaning;
  }

  /** Returns how urgent it is, 0 for nothing to do. */
  public int weight() {
    return weight;
  }

  /** Returns what stands for it where it is of an evening before: what was well then may not be. */
  Mark before() {
    return weight == 0 && this != ENDED ? NOT_SEEN : this;
  }

  /** Says whether a person should look at the site: all but held ones, which need a photo. */
  public boolean toLookAt() {
    return weight > 0 && this != HELD;
  }
}
