// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import java.util.ArrayList;
import java.util.List;

/** Which places are neighbours, with weights: for spatial statistics of sites on a board. */
public final class Neighbours {
  /** How neighbours weigh. */
  public enum Weighting {
    /** Each pair of neighbours weighs 1. */
    BINARY,
    /** The neighbours of a place weigh 1 together. */
    ROW_STANDARDISED
  }

  private final List<int[]> of;
  private final Weighting weighting;

  private Neighbours(List<int[]> of, Weighting weighting) {
    this.of = of;
    this.weighting = weighting;
  }

  /**
   * Makes places neighbours that lie within a distance of each other.
   *
   * @param x places along the board, any unit
   * @param y places across it, same length and unit
   * @param distance how far neighbours are apart at most; 1.1 times the pitch gives the four
   *     nearest on a square grid, 1.5 times the eight
   * @param weighting how they weigh
   */
  public static Neighbours within(double[] x, double[] y, double distance, Weighting weighting) {
    if (x.length != y.length) {
      throw new IllegalArgumentException("y must have length " + x.length + ", got " + y.length);
    }
    List<int[]> of = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      List<Integer> near = new ArrayList<>();
      for (int j = 0; j < x.length; j++) {
        if (j != i && Math.hypot(x[i] - x[j], y[i] - y[j]) <= distance) {
          near.add(j);
        }
      }
      of.add(near.stream().mapToInt(Integer::intValue).toArray());
    }
    return new Neighbours(of, weighting);
  }

  int size() {
    return of.size();
  }

  int[] of(int i) {
    return of.get(i);
  }

  /** Returns the weight of each neighbour of place {@code i}. */
  double weight(int i) {
    return weighting == Weighting.BINARY ? 1 : 1.0 / of.get(i).length;
  }
}
