// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import java.util.Optional;

/**
 * Agreement of two judges beyond chance.
 *
 * <p>{@code kappa = (po - pe) / (1 - pe)}; standard error for large samples by Fleiss, Cohen and
 * Everitt 1969, Psychol. Bull. 72:323-327; Cohen 1960, Educ. Psychol. Meas. 20:37-46.
 *
 * @param kappa agreement, 1 for full, 0 for what chance gives
 * @param standardError its standard error
 * @param agreement share of cases in which both said the same, 0..1
 * @param cases number of cases
 */
public record CohensKappa(double kappa, double standardError, double agreement, int cases) {
  /**
   * Computes kappa from a square table of counts.
   *
   * @param counts {@code counts[a][b]}: cases that the first judge called a, the second b
   * @return empty with no cases, or where both judges always used one and the same word
   */
  public static Optional<CohensKappa> of(int[][] counts) {
    int k = counts.length;
    double n = 0;
    double[] rows = new double[k];
    double[] columns = new double[k];
    double agreed = 0;
    for (int a = 0; a < k; a++) {
      if (counts[a].length != k) {
        throw new IllegalArgumentException(
            "counts must be square, got a row of " + counts[a].length);
      }
      for (int b = 0; b < k; b++) {
        n += counts[a][b];
        rows[a] += counts[a][b];
        columns[b] += counts[a][b];
      }
      agreed += counts[a][a];
    }
    double chance = 0;
    for (int a = 0; a < k; a++) {
      chance += rows[a] * columns[a] / (n * n);
    }
    if (n == 0 || chance >= 1) {
      return Optional.empty();
    }
    double po = agreed / n;
    double kappa = (po - chance) / (1 - chance);
    double spread = 0;
    for (int a = 0; a < k; a++) {
      for (int b = 0; b < k; b++) {
        double margins = (rows[b] + columns[a]) / n * (1 - kappa);
        double part = a == b ? 1 - margins : -margins;
        spread += counts[a][b] / n * part * part;
      }
    }
    double rest = kappa - chance * (1 - kappa);
    double variance = (spread - rest * rest) / ((1 - chance) * (1 - chance) * n);
    return Optional.of(new CohensKappa(kappa, Math.sqrt(Math.max(0, variance)), po, (int) n));
  }

  /** Returns the lower end of the 95 % interval, at least -1. */
  public double lo95() {
    return Math.max(-1, kappa - 1.959963984540054 * standardError);
  }

  /** Returns the upper end of the 95 % interval, at most 1. */
  public double hi95() {
    return Math.min(1, kappa + 1.959963984540054 * standardError);
  }
}
