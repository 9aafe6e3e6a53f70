// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Tells a board whose apparent size cannot be: boards of one water float alike, so that under one
 * camera all look as large, against the station file, as their neighbours do.
 *
 * <p>A board overgrown on all sides shows no edge of its own; what is then taken for its edges are
 * those of its neighbours or the gaps beside them, and it looks too large or too small.
 */
final class SameWater {
  /**
   * Boards differ by no more than that in size, ln: under a camera 2 m above them a board floats
   * some 10 mm higher or lower (0.005), and its edges are found to a mm in 300 (0.003 each). A
   * working value, half as much again.
   */
  private static final double ALIKE_LN = 0.012;

  private SameWater() {}

  /**
   * Returns the size that most boards of a photo agree on. Where two sizes have as many boards
   * each, the smaller one counts: what is taken for an overgrown board's edges lies outside it.
   *
   * @param sizesLn of each board ln of its size in the picture over that which the station file
   *     foretells
   * @return the mean of those that agree; nothing where fewer than two, or not half of all, do
   */
  static OptionalDouble usual(double[] sizesLn) {
    double[] sorted = sizesLn.clone();
    Arrays.sort(sorted);
    int from = 0;
    int best = 0;
    for (int i = 0; i < sorted.length; i++) {
      int n = 0;
      while (i + n < sorted.length && sorted[i + n] - sorted[i] < ALIKE_LN) {
        n++;
      }
      if (n > best) {
        best = n;
        from = i;
      }
    }
    return best < 2 || 2 * best < sorted.length
        ? OptionalDouble.empty()
        : Arrays.stream(sorted, from, from + best).average();
  }

  /** Says whether a board's size is at odds with the usual one; never where that is unknown. */
  static boolean isOdd(double sizeLn, OptionalDouble usual) {
    return usual.isPresent() && Math.abs(sizeLn - usual.getAsDouble()) > ALIKE_LN;
  }
}
