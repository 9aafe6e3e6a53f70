// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.special.Erf;

/**
 * Moran's I: whether like values lie side by side.
 *
 * <p>{@code I = (n / S0) sum w (x_i - m)(x_j - m) / sum (x - m)^2}; expectation {@code -1/(n-1)},
 * variance under randomisation.
 *
 * <p>Source: Cliff and Ord 1981, Spatial Processes, section 2.3.
 *
 * @param i the statistic
 * @param expected its expectation where values lie at random
 * @param variance its variance where values lie at random
 */
public record MoransI(double i, double expected, double variance) {
  /**
   * Computes the statistic.
   *
   * @param values one value per place
   * @param neighbours of the same places
   * @return empty under 4 places, with no neighbours, or where all values are the same
   */
  public static Optional<MoransI> of(double[] values, Neighbours neighbours) {
    int n = values.length;
    if (n != neighbours.size()) {
      throw new IllegalArgumentException(
          "values must have length " + neighbours.size() + ", got " + n);
    }
    Weights w = new Weights(neighbours);
    double mean = Arrays.stream(values).average().orElse(0);
    double[] off = Arrays.stream(values).map(v -> v - mean).toArray();
    double m2 = Arrays.stream(off).map(v -> v * v).sum();
    if (n < 4 || w.s0 == 0 || !(m2 > 0)) {
      return Optional.empty();
    }
    double cross = 0;
    for (int i = 0; i < n; i++) {
      for (int j : neighbours.of(i)) {
        cross += neighbours.weight(i) * off[i] * off[j];
      }
    }
    double m4 = Arrays.stream(off).map(v -> v * v * v * v).sum();
    double kurtosis = n * m4 / (m2 * m2);
    double expected = -1.0 / (n - 1);
    return Optional.of(
        new MoransI(
            n / w.s0 * cross / m2, expected, w.variance(n, kurtosis) - expected * expected));
  }

  /** Returns the statistic in deviations from its expectation. */
  public double z() {
    return (i - expected) / Math.sqrt(variance);
  }

  /** Returns the two-sided p value by the normal approximation. */
  public double p() {
    return Erf.erfc(Math.abs(z()) / Math.sqrt(2));
  }

  /** Sums of weights. */
  private static final class Weights {
    private final double s0;
    private final double s1;
    private final double s2;

    Weights(Neighbours neighbours) {
      int n = neighbours.size();
      double[] in = new double[n];
      double[] out = new double[n];
      double squares = 0;
      double crossed = 0;
      for (int i = 0; i < n; i++) {
        for (int j : neighbours.of(i)) {
          double w = neighbours.weight(i);
          out[i] += w;
          in[j] += w;
          squares += w * w;
          // Being near is mutual, so j has i as neighbour too.
          crossed += w * neighbours.weight(j);
        }
      }
      double both = 0;
      for (int i = 0; i < n; i++) {
        both += (in[i] + out[i]) * (in[i] + out[i]);
      }
      s0 = Arrays.stream(out).sum();
      s1 = squares + crossed;
      s2 = both;
    }

    double variance(double n, double kurtosis) {
      double a = n * ((n * n - 3 * n + 3) * s1 - n * s2 + 3 * s0 * s0);
      double b = kurtosis * ((n * n - n) * s1 - 2 * n * s2 + 6 * s0 * s0);
      return (a - b) / ((n - 1) * (n - 2) * (n - 3) * s0 * s0);
    }
  }
}
