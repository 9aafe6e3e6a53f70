// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/**
 * Marquardt's damped steps on plain arrays: the short way down where a sum of squares is well
 * behaved, which most curves of a farm are. Where it loses its way {@link Descent} goes the long
 * one.
 *
 * <p>Source: Marquardt 1963, J. Soc. Indust. Appl. Math. 11:431-441 (damping scaled by the
 * diagonal).
 */
final class Marquardt {
  private static final int MOST_STEPS = 60;
  private static final double FIRST_DAMPING = 1e-3;
  private static final double LEAST_DAMPING = 1e-10;
  private static final double MOST_DAMPING = 1e10;
  private static final double MORE = 5;
  private static final double LESS = 8;

  /** Relative fall of the sum of squares at which what is left is polishing; working value. */
  private static final double SMALL_FALL = 1e-9;

  private final Residuals residuals;
  private final int p;
  private final double[][] normal;
  private final double[] slope;
  private final double[] step;
  private final double[][] factor;

  private Marquardt(Residuals residuals, int p) {
    this.residuals = residuals;
    this.p = p;
    this.normal = new double[p][p];
    this.slope = new double[p];
    this.step = new double[p];
    this.factor = new double[p][p];
  }

  /**
   * Goes down from {@code start}; {@code residuals} remembers how far it came.
   *
   * @return whether it came to where the sum hardly falls any more
   */
  static boolean down(double[] start, Residuals residuals) {
    return new Marquardt(residuals, start.length).descend(start);
  }

  private boolean descend(double[] start) {
    double[] at = start.clone();
    double cost = residuals.evaluate(at);
    double damping = FIRST_DAMPING;
    int still = 0;
    linearise();
    for (int i = 0; i < MOST_STEPS && damping < MOST_DAMPING; i++) {
      if (!solve(damping)) {
        damping *= MORE;
        continue;
      }
      double[] next = at.clone();
      for (int j = 0; j < p; j++) {
        next[j] += step[j];
      }
      double then = residuals.evaluate(next);
      if (then <= cost) {
        still = cost - then <= SMALL_FALL * cost ? still + 1 : 0;
        at = next;
        cost = then;
        linearise();
        damping = Math.max(LEAST_DAMPING, damping / LESS);
        if (still >= 2 || cost == 0) {
          return true;
        }
      } else {
        damping *= MORE;
      }
    }
    return false;
  }

  private void linearise() {
    double[] value = residuals.minusResiduals();
    double[][] rows = residuals.jacobian();
    for (int j = 0; j < p; j++) {
      double along = 0;
      for (int i = 0; i < value.length; i++) {
        along += rows[i][j] * value[i];
      }
      slope[j] = -along;
      for (int k = 0; k <= j; k++) {
        double sum = 0;
        for (double[] row : rows) {
          sum += row[j] * row[k];
        }
        normal[j][k] = sum;
      }
    }
  }

  /** Solves the damped normal equations by Cholesky; says whether that could be done. */
  private boolean solve(double damping) {
    for (int j = 0; j < p; j++) {
      for (int k = 0; k <= j; k++) {
        double sum = normal[j][k] * (j == k ? 1 + damping : 1);
        for (int m = 0; m < k; m++) {
          sum -= factor[j][m] * factor[k][m];
        }
        if (j == k && !(sum > 0)) {
          return false;
        }
        factor[j][k] = j == k ? Math.sqrt(sum) : sum / factor[k][k];
      }
    }
    for (int j = 0; j < p; j++) {
      double sum = slope[j];
      for (int k = 0; k < j; k++) {
        sum -= factor[j][k] * step[k];
      }
      step[j] = sum / factor[j][j];
    }
    for (int j = p - 1; j >= 0; j--) {
      double sum = step[j];
      for (int k = j + 1; k < p; k++) {
        sum -= factor[k][j] * step[k];
      }
      step[j] = sum / factor[j][j];
    }
    return true;
  }
}
