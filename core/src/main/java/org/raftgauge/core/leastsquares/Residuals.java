// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.Arrays;

/**
 * The weighted residuals of points under a mean function, and their Jacobian.
 *
 * <p>A lower bound enters by its deviance residual {@code sigma sqrt(-2 ln Phi(z))}, so that the
 * sum of squares over sigma squared is -2 ln likelihood but for a constant. Remembers the best
 * parameters that it was ever evaluated at, because an optimiser may stop by an exception. Its
 * arrays are written anew by each evaluation: a fit evaluates hundreds of times. Asked for the same
 * parameters twice running, as at the end of one step and the beginning of the next, it has them.
 */
final class Residuals {
  /** Stands for a mean that is not finite: so far away that every optimiser turns back. */
  private static final double FAR = 1e100;

  private final MeanFunction mean;
  private final Points points;
  private final double sigma;
  private final double[] value;
  private final double[][] jacobian;
  private final double[] roots;
  private double[] last = new double[0];
  private double lastCost;
  private double[] best = new double[0];
  private double bestCost = Double.POSITIVE_INFINITY;

  Residuals(MeanFunction mean, Points points, double sigma) {
    this.mean = mean;
    this.points = points;
    this.sigma = sigma;
    this.value = new double[points.size()];
    this.jacobian = new double[points.size()][];
    this.roots = new double[points.size()];
    for (int i = 0; i < roots.length; i++) {
      roots[i] = Math.sqrt(points.weight(i));
    }
  }

  double[] best() {
    return best.clone();
  }

  double bestCost() {
    return bestCost;
  }

  int size() {
    return value.length;
  }

  /** Returns minus the residuals of the last evaluation; the next one writes over them. */
  double[] minusResiduals() {
    return value;
  }

  /** Returns the Jacobian of the last evaluation, a row a point; the next one writes over it. */
  double[][] jacobian() {
    return jacobian;
  }

  /**
   * Evaluates.
   *
   * @param at the parameters
   * @return the sum of squares
   */
  double evaluate(double[] at) {
    if (last.length > 0 && Arrays.equals(at, last)) {
      return lastCost;
    }
    double cost = 0;
    for (int i = 0; i < value.length; i++) {
      if (jacobian[i] == null || jacobian[i].length != at.length) {
        jacobian[i] = new double[at.length];
      }
      value[i] = fill(i, at, jacobian[i]);
      cost += value[i] * value[i];
    }
    if (cost < bestCost || best.length == 0) {
      bestCost = cost;
      best = at.clone();
    }
    last = at.clone();
    lastCost = cost;
    return cost;
  }

  /** Returns minus residual {@code i} and writes its row of the Jacobian. */
  private double fill(int i, double[] parameters, double[] row) {
    double root = roots[i];
    if (root == 0) {
      Arrays.fill(row, 0);
      return 0;
    }
    double value = mean.at(points.x(i), parameters, row);
    if (!allFinite(value, row)) {
      Arrays.fill(row, 0);
      return FAR;
    }
    if (!points.isLowerBound(i)) {
      scale(row, root);
      return root * (value - points.y(i));
    }
    double z = root * (value - points.y(i)) / sigma;
    double logPhi = CensoredTerm.logPhi(z);
    double deviance = CensoredTerm.deviance(logPhi);
    scale(row, deviance < 1e-150 ? 0 : root * CensoredTerm.hazard(z, logPhi) / deviance);
    return -sigma * deviance;
  }

  private static boolean allFinite(double value, double[] row) {
    boolean finite = Math.abs(value) < FAR;
    for (double d : row) {
      finite &= Double.isFinite(d);
    }
    return finite;
  }

  private static void scale(double[] row, double factor) {
    for (int j = 0; j < row.length; j++) {
      row[j] *= factor;
    }
  }
}
