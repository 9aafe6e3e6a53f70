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

  /** A dead seedling covers at least and at most these shares of its hole. */
  private static final double INSIDE = 0.03;

  private static final double MOST_INSIDE = 0.3;

  /** Second moment of area over that of a disc: under it, a part larger than one leaf is a plug. */
  private static final double ROUND = 1.06;

  private static final double ROUND_INSIDE = 0.08;

  /** A dead leaf borders on living leaf along at least this share of its rim. */
  private static final double BORDER = 0.15;

  private int pixels;
  private double sumX;
  private double sumY;
  private double sumSquares;
  private double warm;
  int beyond;
  double aboutWarm;
  int about;
  int besideLeaf;
  int rim;
  int living;

  /** Adds a pixel and how warm its colour is. */
  void add(double x, double y, double warmth) {
    pixels++;
    sumX += x;
    sumY += y;
    sumSquares += x * x + y * y;
    warm += warmth;
  }

  /** Says whether it is dead leaf; {@code holePx2} is the area of a hole. */
  boolean dead(double holePx2) {
    boolean crisp = aboutWarm <= FADED * warm / Math.max(1, pixels) * about;
    int inHole = pixels - beyond;
    boolean seedling =
        inHole > INSIDE * holePx2 && pixels < MOST_INSIDE * holePx2 && !plug(holePx2);
    boolean whole = inHole > 0 && (beyond > BEYOND * holePx2 || seedling);
    boolean outer = besideLeaf > BORDER * rim && living > pixels && 2 * beyond > pixels;
    return pixels >= LEAST_PX && crisp && (whole || outer);
  }

  /** Says whether it is as round as the disc of its area, and no single small leaf. */
  private boolean plug(double holePx2) {
    double n = pixels;
    double moment = sumSquares - (sumX * sumX + sumY * sumY) / n;
    return pixels > ROUND_INSIDE * holePx2 && moment * 2 * Math.PI / (n * n) < ROUND;
  }
}
