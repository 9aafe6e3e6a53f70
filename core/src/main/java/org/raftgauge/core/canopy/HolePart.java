// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;

/** Colours of a part of a hole or of its surroundings. */
final class HolePart {
  /** Half width of a plug's cluster of colours. */
  private static final double CLUSTER = 0.25;

  /** Green light of a board of the same make is far under this; 1 is white. */
  private static final double MOST_GREEN = 2;

  private static final int BINS = 256;
  private static final double[] NO_COLOUR = {0, 0};

  private final List<double[]> colours = new ArrayList<>();

  /** Green of what is grey. */
  private final Histogram grey = new Histogram(MOST_GREEN, BINS);

  private int seen;

  /** Counts a pixel. */
  void see() {
    seen++;
  }

  /** Adds u, v and green of a pixel that could be leaf by its score. */
  void add(double[] colour) {
    colours.add(colour);
  }

  /** Adds u, v and green of one that could not; what has a colour of its own is not grey. */
  void addDull(double[] colour) {
    if (isNear(colour, NO_COLOUR)) {
      grey.add((float) colour[2]);
    }
  }

  /** Returns u, v and green of each leaf-like pixel. */
  List<double[]> colours() {
    return colours;
  }

  /** Returns those of a colour. */
  List<double[]> near(double[] mode) {
    return colours.stream().filter(s -> isNear(s, mode)).toList();
  }

  /** Returns the share of a colour, 0..1. */
  double share(double[] mode) {
    return colours.stream().filter(s -> isNear(s, mode)).count() / (double) Math.max(1, seen);
  }

  /** Returns the share of what is grey and has at least so much green, 0..1. */
  double greyShare(double green) {
    return grey.from(green) / (double) Math.max(1, seen);
  }

  /** Says whether a colour, u and v first, is about another. */
  static boolean isNear(double[] s, double[] mode) {
    double du = s[0] - mode[0];
    double dv = s[1] - mode[1];
    return du * du + dv * dv < CLUSTER * CLUSTER;
  }
}
