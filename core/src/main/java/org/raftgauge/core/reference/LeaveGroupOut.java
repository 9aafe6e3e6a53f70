// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Median and spread of a cohort's values without one group's (a raft's) own: the reference of a
 * crop without history. One sort serves all groups.
 */
public final class LeaveGroupOut {
  /** Other plants that are needed; working value. */
  private static final int FEWEST_OTHERS = 8;

  /** Distance of the normal's quartiles in standard deviations. */
  private static final double QUARTILES = 1.348979500392163;

  private LeaveGroupOut() {}

  /**
   * What the others show.
   *
   * @param median median of their values
   * @param sd their spread: distance of quartiles over 1.349
   * @param others how many they are
   */
  public record Others(double median, double sd, int others) {
    /** Returns the standard error of the median, for values near normal. */
    public double error() {
      return Math.sqrt(Math.PI / 2) * sd / Math.sqrt(others);
    }
  }

  /**
   * Returns for each group what all other groups show.
   *
   * @param values one per plant, finite: ln areas, or their differences to the cohort's curve where
   *     plants differ in age
   * @param group group number of each, 0 and up, same length
   * @return one entry for each group number to the highest; empty where others are under 8
   */
  public static List<Optional<Others>> of(double[] values, int[] group) {
    if (values.length != group.length) {
      throw new IllegalArgumentException(
          "group must have length " + values.length + ", got " + group.length);
    }
    int groups = Arrays.stream(group).max().orElse(-1) + 1;
    Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
    int[] counts = new int[groups];
    for (int g : group) {
      counts[g]++;
    }
    int[][] ranks = new int[groups][];
    for (int g = 0; g < groups; g++) {
      ranks[g] = new int[counts[g]];
    }
    int[] filled = new int[groups];
    double[] sorted = new double[values.length];
    for (int rank = 0; rank < order.length; rank++) {
      sorted[rank] = values[order[rank]];
      int g = group[order[rank]];
      ranks[g][filled[g]++] = rank;
    }
    return Arrays.stream(ranks).map(own -> others(sorted, own)).collect(Collectors.toList());
  }

  private static Optional<Others> others(double[] sorted, int[] own) {
    int n = sorted.length - own.length;
    if (n < FEWEST_OTHERS) {
      return Optional.empty();
    }
    double low = quantile(sorted, own, 0.25 * (n - 1));
    double high = quantile(sorted, own, 0.75 * (n - 1));
    double middle = quantile(sorted, own, 0.5 * (n - 1));
    return Optional.of(new Others(middle, (high - low) / QUARTILES, n));
  }

  /** Returns the value at a fractional rank among the others, between neighbours by line. */
  private static double quantile(double[] sorted, int[] own, double rank) {
    int below = (int) rank;
    double a = sorted[place(own, below)];
    double b = rank > below ? sorted[place(own, below + 1)] : a;
    return a + (rank - below) * (b - a);
  }

  /** Returns the place in the whole of the other with rank {@code k}. */
  private static int place(int[] own, int k) {
    int at = k;
    for (int rank : own) {
      if (rank <= at) {
        at++;
      } else {
        break;
      }
    }
    return at;
  }
}
