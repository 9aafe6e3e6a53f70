// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;

/**
 * How the weights of a raft's heads are expected to be spread: each head lognormal about what the
 * grader tells of it, by its own error and the scatter of weighings. What all heads share
 * (calibration, weather) moves the whole spread and is left out; it is in the totals' intervals.
 *
 * @param heads the planted heads; none where weights cannot be told
 */
public record HeadSpread(List<Head> heads) {
  /** Of a raft without weights. */
  static final HeadSpread NONE = new HeadSpread(List.of());

  /** Copies the list. */
  public HeadSpread {
    heads = List.copyOf(heads);
  }

  /**
   * A head.
   *
   * @param medianG its likeliest weight, g, above 0
   * @param sdLn standard deviation of the ln of its weight, above 0
   * @param stands the probability that it stands, 0 to 1
   */
  public record Head(double medianG, double sdLn, double stands) {

    double under(double grams) {
      return grams <= 0 ? 0 : NormalShare.below(Math.log(grams / medianG) / sdLn);
    }
  }

  /**
   * Returns how many heads are expected in a class of weights.
   *
   * @param fromG the class's lower end, g
   * @param toG its upper end, g
   * @return heads, from 0 to their number
   */
  public double expected(double fromG, double toG) {
    return heads.stream().mapToDouble(h -> h.stands() * (h.under(toG) - h.under(fromG))).sum();
  }
}
