// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * Softmax regression: {@code P(class k) = exp(w_k . x) / sum_j exp(w_j . x)}, the last class's
 * weights being 0, fitted by maximum likelihood with a ridge.
 *
 * <p>Source: Böhning (1992), Multinomial logistic regression algorithm, Ann. Inst. Statist. Math.
 * 44:197-200 (from memory). Differs from it: the true Hessian, halved steps where the likelihood
 * falls; the linear systems by Hipparchus' Cholesky decomposition.
 */
final class Softmax {
  private static final int MOST_ROUNDS = 30;
  private static final int MOST_HALVINGS = 8;

  /** Changes of the penalised mean log-likelihood under this are none. */
  private static final double SETTLED = 1e-9;

  private final double[][] x;
  private final int[] y;
  private final double[] weight;
  private final double ridge;
  private final int classes;
  private final int terms;

  /** Sets up a fit; weights are scaled to a sum of 1. */
  private Softmax(Sample sample, int classes, double ridge) {
    this.x = sample.x;
    this.y = sample.y;
    this.ridge = ridge;
    this.classes = classes;
    this.terms = x[0].length;
    double sum = 0;
    for (double w : sample.weight) {
      sum += w;
    }
    this.weight = new double[x.length];
    for (int i = 0; i < weight.length; i++) {
      weight[i] = sample.weight[i] / sum;
    }
  }

  /** What is fitted to; not a record, as it holds arrays. */
  static final class Sample {
    private final double[][] x;
    private final int[] y;
    private final double[] weight;

    /**
     * Wraps a sample.
     *
     * @param x terms of each case, the first 1
     * @param y class of each case, from 0
     * @param weight of each case, above 0
     */
    Sample(double[][] x, int[] y, double[] weight) {
      this.x = x;
      this.y = y;
      this.weight = weight;
    }
  }

  /**
   * Fits the weights.
   *
   * @param sample at least one case
   * @param classes number of classes, 2 or more
   * @param ridge penalty on half the squared weights, against a mean log-likelihood
   * @return weights by class and term; those of the last class are 0
   */
  static double[][] fit(Sample sample, int classes, double ridge) {
    return new Softmax(sample, classes, ridge).fit();
  }

  private double[][] fit() {
    int free = classes - 1;
    double[] at = new double[free * terms];
    double now = value(at);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double[] step = newton(at);
      double scale = 1;
      double[] next = moved(at, step, scale);
      double then = value(next);
      for (int h = 0; h < MOST_HALVINGS && then < now; h++) {
        scale /= 2;
        next = moved(at, step, scale);
        then = value(next);
      }
      if (then < now) {
        break;
      }
      double gain = then - now;
      at = next;
      now = then;
      if (gain < SETTLED) {
        break;
      }
    }
    double[][] weights = new double[classes][terms];
    for (int k = 0; k < free; k++) {
      System.arraycopy(at, k * terms, weights[k], 0, terms);
    }
    return weights;
  }

  private static double[] moved(double[] at, double[] step, double scale) {
    double[] moved = at.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += scale * step[i];
    }
    return moved;
  }

  /** Mean log-likelihood less the penalty. */
  private double value(double[] at) {
    double sum = 0;
    double[] p = new double[classes];
    for (int i = 0; i < x.length; i++) {
      shares(at, x[i], p);
      sum += weight[i] * Math.log(Math.max(1e-300, p[y[i]]));
    }
    for (double w : at) {
      sum -= 0.5 * ridge * w * w;
    }
    return sum;
  }

  private double[] newton(double[] at) {
    int free = classes - 1;
    double[] slope = new double[at.length];
    double[][] bend = new double[at.length][at.length];
    double[] p = new double[classes];
    for (int i = 0; i < x.length; i++) {
      shares(at, x[i], p);
      for (int k = 0; k < free; k++) {
        double off = weight[i] * ((y[i] == k ? 1 : 0) - p[k]);
        for (int a = 0; a < terms; a++) {
          slope[k * terms + a] += off * x[i][a];
        }
        for (int j = 0; j <= k; j++) {
          add(
              bend,
              new int[] {k * terms, j * terms},
              x[i],
              weight[i] * p[k] * ((j == k ? 1 : 0) - p[j]));
        }
      }
    }
    for (int a = 0; a < at.length; a++) {
      slope[a] -= ridge * at[a];
      bend[a][a] += ridge;
      for (int b = 0; b < a; b++) {
        bend[b][a] = bend[a][b];
      }
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(bend, false), 1e-9, 1e-14)
        .getSolver()
        .solve(new ArrayRealVector(slope, false))
        .toArray();
  }

  /** Adds the lower triangle of a block; blocks off the diagonal whole. */
  private void add(double[][] bend, int[] corner, double[] row, double factor) {
    for (int a = 0; a < terms; a++) {
      double f = factor * row[a];
      double[] line = bend[corner[0] + a];
      int to = corner[0] == corner[1] ? a + 1 : terms;
      for (int b = 0; b < to; b++) {
        line[corner[1] + b] += f * row[b];
      }
    }
  }

  private void shares(double[] at, double[] row, double[] p) {
    double top = 0;
    p[classes - 1] = 0;
    for (int k = 0; k < classes - 1; k++) {
      double sum = 0;
      for (int a = 0; a < terms; a++) {
        sum += at[k * terms + a] * row[a];
      }
      p[k] = sum;
      top = Math.max(top, sum);
    }
    double all = 0;
    for (int k = 0; k < classes; k++) {
      p[k] = Math.exp(p[k] - top);
      all += p[k];
    }
    for (int k = 0; k < classes; k++) {
      p[k] /= all;
    }
  }
}
