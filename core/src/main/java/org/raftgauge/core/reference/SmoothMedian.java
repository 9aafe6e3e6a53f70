// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * A smooth median of y by x: cubic B-splines with a penalty on second differences, its strength by
 * generalised cross-validation, the median by reweighting with 1 / |residual|.
 *
 * <p>Sources: Eilers and Marx 1996, Stat. Sci. 11:89-121 (P-splines); Schlossmacher 1973, J. Am.
 * Stat. Assoc. 68:857-859 (least absolute values by reweighting).
 */
final class SmoothMedian {
  private static final int SEGMENTS = 16;
  private static final int ROUNDS = 25;

  private final double lo;
  private final double step;
  private final double[] coefficients;

  private SmoothMedian(double lo, double step, double[] coefficients) {
    this.lo = lo;
    this.step = step;
    this.coefficients = coefficients;
  }

  /** Fits; x of at least two values, y finite. */
  static SmoothMedian of(double[] x, double[] y) {
    double lo = Arrays.stream(x).min().orElseThrow();
    double hi = Arrays.stream(x).max().orElseThrow();
    double step = Math.max(hi - lo, 1e-9) / SEGMENTS;
    SmoothMedian empty = new SmoothMedian(lo, step, new double[SEGMENTS + 3]);
    double[] weights = new double[x.length];
    Arrays.fill(weights, 1);
    double penalty = empty.bestPenalty(x, y, weights);
    SmoothMedian fit = empty.solved(new Normal(empty, x, y, weights), penalty);
    double floor = 1e-3 * (spread(y) + 1e-9);
    for (int round = 0; round < ROUNDS; round++) {
      double sum = 0;
      for (int i = 0; i < x.length; i++) {
        weights[i] = 1 / Math.max(floor, Math.abs(y[i] - fit.at(x[i])));
        sum += weights[i];
      }
      for (int i = 0; i < x.length; i++) {
        weights[i] *= x.length / sum;
      }
      fit = empty.solved(new Normal(empty, x, y, weights), penalty);
    }
    return fit;
  }

  /** Returns the smooth median; past the ends it goes on as a straight line. */
  double at(double x) {
    double hi = lo + SEGMENTS * step;
    if (x < lo || x > hi) {
      double end = x < lo ? lo : hi;
      double inward = x < lo ? lo + step / 8 : hi - step / 8;
      return inside(end) + (x - end) * (inside(end) - inside(inward)) / (end - inward);
    }
    return inside(x);
  }

  private double inside(double x) {
    double[] basis = new double[4];
    int first = basis(x, basis);
    double sum = 0;
    for (int k = 0; k < 4; k++) {
      sum += basis[k] * coefficients[first + k];
    }
    return sum;
  }

  /** Writes the four cubic B-splines that are not 0 at x; returns the first one's place. */
  private int basis(double x, double[] out) {
    double place = Math.min(SEGMENTS - 1e-12, Math.max(0, (x - lo) / step));
    int first = (int) place;
    double u = place - first;
    out[0] = (1 - u) * (1 - u) * (1 - u) / 6;
    out[1] = (3 * u * u * u - 6 * u * u + 4) / 6;
    out[2] = (-3 * u * u * u + 3 * u * u + 3 * u + 1) / 6;
    out[3] = u * u * u / 6;
    return first;
  }

  private double bestPenalty(double[] x, double[] y, double[] weights) {
    Normal normal = new Normal(this, x, y, weights);
    double best = 1;
    double least = Double.POSITIVE_INFINITY;
    for (double power = -2; power <= 5; power += 0.5) {
      double penalty = Math.pow(10, power);
      SmoothMedian fit = solved(normal, penalty);
      double rss = 0;
      for (int i = 0; i < x.length; i++) {
        rss += Math.pow(y[i] - fit.at(x[i]), 2);
      }
      double free = x.length - normal.freedom(penalty);
      double score = free > 0.5 ? rss / (free * free) : Double.POSITIVE_INFINITY;
      if (score < least) {
        least = score;
        best = penalty;
      }
    }
    return best;
  }

  private SmoothMedian solved(Normal normal, double penalty) {
    double[] solution =
        new CholeskyDecomposition(normal.penalised(penalty), 1e-6, 0)
            .getSolver()
            .solve(new ArrayRealVector(normal.right, false))
            .toArray();
    return new SmoothMedian(lo, step, solution);
  }

  private static double spread(double[] y) {
    double mean = Arrays.stream(y).average().orElse(0);
    return Math.sqrt(Arrays.stream(y).map(v -> (v - mean) * (v - mean)).average().orElse(0));
  }

  /** The normal equations of the penalised fit. */
  private static final class Normal {
    private final double[][] left = new double[SEGMENTS + 3][SEGMENTS + 3];
    private final double[] right = new double[SEGMENTS + 3];

    Normal(SmoothMedian spline, double[] x, double[] y, double[] weights) {
      double[] basis = new double[4];
      for (int i = 0; i < x.length; i++) {
        int first = spline.basis(x[i], basis);
        for (int a = 0; a < 4; a++) {
          right[first + a] += weights[i] * basis[a] * y[i];
          for (int b = 0; b < 4; b++) {
            left[first + a][first + b] += weights[i] * basis[a] * basis[b];
          }
        }
      }
    }

    RealMatrix penalised(double penalty) {
      double[][] out = new double[left.length][];
      for (int i = 0; i < left.length; i++) {
        out[i] = left[i].clone();
        // Where no photo supports a spline, the penalty alone carries it; this keeps it solvable.
        out[i][i] += 1e-9;
      }
      double[] second = {1, -2, 1};
      for (int i = 0; i + 2 < left.length; i++) {
        for (int a = 0; a < 3; a++) {
          for (int b = 0; b < 3; b++) {
            out[i + a][i + b] += penalty * second[a] * second[b];
          }
        }
      }
      return new Array2DRowRealMatrix(out, false);
    }

    /** Returns the effective number of parameters. */
    double freedom(double penalty) {
      RealMatrix inverse =
          new CholeskyDecomposition(penalised(penalty), 1e-6, 0).getSolver().getInverse();
      return inverse.multiply(new Array2DRowRealMatrix(left)).getTrace();
    }
  }
}
