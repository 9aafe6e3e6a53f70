// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** What is known of a connected brown part of a deck and of what is about it. */
final class BrownPart {
  /** The brown about a crisp part is under this share of its own. */
  private static final double FADED = 0.5;

  /** A part smaller than this is an edge, px. */
  private static final int LEAST_PX = 12;

  /** A dead plant's part beyond its hole is at least this share of the hole. */
  private static final double BEYOND = 0.15;

  /** A dead plant that hardly leaves its hole covers at least and at most these shares of it. */
  private static final double INSIDE = 0.03;

  private static final double MOST_INSIDE = 1.4;

  /**
   * A plug's rim, where no leaf hides it, is off a circle by less than this share of its radius; a
   * withered rosette's is lobed, by 10 % and more (rendered ones). Working value. Parts no larger
   * than one leaf may be as round.
   */
  private static final double ROUND = 0.06;

  private static final double ROUND_INSIDE = 0.08;

  /** A dead leaf borders on living leaf along at least this share of its rim. */
  private static final double BORDER = 0.15;

  private int pixels;
  private double warm;
  int beyond;
  double aboutWarm;
  int about;
  int besideLeaf;
  int rim;
  int living;
  final FittedCircle bareRim = new FittedCircle();

  /** Adds a pixel by how warm its colour is. */
  void add(double warmth) {
    pixels++;
    warm += warmth;
  }

  /** Says whether it is dead leaf; {@code holePx2} is the area of a hole. */
  boolean dead(double holePx2) {
    boolean crisp = aboutWarm <= FADED * warm / Math.max(1, pixels) * about;
    int inHole = pixels - beyond;
    boolean shrunk = inHole > INSIDE * holePx2 && pixels < MOST_INSIDE * holePx2 && !plug(holePx2);
    boolean whole = inHole > 0 && (beyond > BEYOND * holePx2 || shrunk);
    boolean outer = besideLeaf > BORDER * rim && living > pixels && 2 * beyond > pixels;
    return pixels >= LEAST_PX && crisp && (whole || outer);
  }

  /** Says whether it ends on a circle, and is no single small leaf. */
  private boolean plug(double holePx2) {
    return pixels > ROUND_INSIDE * holePx2 && bareRim.unevenness() < ROUND;
  }
}
