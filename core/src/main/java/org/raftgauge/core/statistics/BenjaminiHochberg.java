// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import java.util.stream.IntStream;

/**
 * Keeps the share of false flags among all flags under a bound.
 *
 * <p>Source: Benjamini and Hochberg 1995, J. R. Statist. Soc. B 57:289-300.
 */
public final class BenjaminiHochberg {
  private BenjaminiHochberg() {}

  /**
   * Returns q values: the least false discovery rate at which each would be flagged.
   *
   * @param p p values, each 0..1
   * @return q values in the order given, each 0..1
   */
  public static double[] qValues(double[] p) {
    for (double value : p) {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException("p must be in 0..1, got " + value);
      }
    }
    int[] order =
        IntStream.range(0, p.length)
            .boxed()
            .sorted((a, b) -> Double.compare(p[b], p[a]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] q = new double[p.length];
    double least = 1;
    for (int i = 0; i < order.length; i++) {
      int rank = p.length - i;
      least = Math.min(least, p[order[i]] * p.length / rank);
      q[order[i]] = least;
    }
    return q;
  }
}
