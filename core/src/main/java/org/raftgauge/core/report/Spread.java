// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import java.util.OptionalDouble;

/** Summaries of the areas of a raft's plants. */
final class Spread {

  private Spread() {}

  /**
   * Returns a quantile, linear between order statistics.
   *
   * <p>Position {@code (n - 1) p} from 0; the type 7 of Hyndman and Fan 1996, doi:10.2307/2684934.
   *
   * @param ascending values in ascending order
   * @param p 0..1
   * @return the quantile; absent without values
   */
  static OptionalDouble quantile(List<Double> ascending, double p) {
    if (ascending.isEmpty()) {
      return OptionalDouble.empty();
    }
    double position = (ascending.size() - 1) * p;
    int below = (int) position;
    int above = Math.min(below + 1, ascending.size() - 1);
    double share = position - below;
    return OptionalDouble.of(ascending.get(below) * (1 - share) + ascending.get(above) * share);
  }

  /**
   * Returns the coefficient of variation: sample standard deviation (n - 1) over mean.
   *
   * @param values above 0
   * @return at least 0; absent under 2 values
   */
  static OptionalDouble variation(List<Double> values) {
    if (values.size() < 2) {
      return OptionalDouble.empty();
    }
    double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
    double squares = values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    return OptionalDouble.of(Math.sqrt(squares / (values.size() - 1)) / mean);
  }
}
