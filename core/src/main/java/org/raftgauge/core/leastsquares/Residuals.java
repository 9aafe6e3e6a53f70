// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/**
 * The weighted residuals of points under a mean function, and their Jacobian.
 *
 * <p>A lower bound enters by its deviance residual {@code sigma sqrt(-2 ln Phi(z))}, so that the
 * sum of squares over sigma squared is -2 ln likelihood but for a constant. Remembers the best
 * parameters that it was ever evaluated at, because an optimiser may stop by an exception.
 */
final class Residuals implements MultivariateJacobianFunction {
  /** Stands for a mean that is not finite: so far away that every optimiser turns back. */
  private static final double FAR = 1e100;

  private final MeanFunction mean;
  private final Points points;
  private final double sigma;
  private double[] best;
  private double bestCost = Double.POSITIVE_INFINITY;

  Residuals(MeanFunction mean, Points points, double sigma) {
    this.mean = mean;
    this.points = points;
    this.sigma = sigma;
  }

  double[] best() {
    return best.clone();
  }

  double bestCost() {
    return bestCost;
  }

  /** Returns minus the residuals and their Jacobian, the target being 0. */
  @Override
  public Pair<RealVector, RealMatrix> value(RealVector at) {
    double[] parameters = at.toArray();
    double[] value = new double[points.size()];
    double[][] jacobian = new double[points.size()][parameters.length];
    double cost = 0;
    for (int i = 0; i < value.length; i++) {
      value[i] = fill(i, parameters, jacobian[i]);
      cost += value[i] * value[i];
    }
    if (cost < bestCost || best == null) {
      bestCost = cost;
      best = parameters;
    }
    return new Pair<>(new ArrayRealVector(value, false), new Array2DRowRealMatrix(jacobian, false));
  }

  /** Returns minus residual {@code i} and writes its row of the Jacobian. */
  private double fill(int i, double[] parameters, double[] row) {
    double weight = points.weight(i);
    if (weight == 0) {
      return 0;
    }
    double root = Math.sqrt(weight);
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
    double deviance = CensoredTerm.deviance(z);
    scale(row, deviance < 1e-150 ? 0 : root * CensoredTerm.hazard(z) / deviance);
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
