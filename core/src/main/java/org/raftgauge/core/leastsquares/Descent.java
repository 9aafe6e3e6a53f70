// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresFactory;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Brings a sum of squares to its minimum: Marquardt's steps on plain arrays, and where these lose
 * their way the library's Levenberg-Marquardt from the same start, which minds ill-conditioned sums
 * more; then plain Gauss-Newton steps to the last digits, where both stall on the flatness of the
 * sum.
 */
final class Descent {
  private static final int MOST_EVALUATIONS = 3_000;
  private static final int MOST_POLISHING = 40;

  private static final int FEW = 2;

  /** A start that is no nearer than so many steps is far. */
  private static final int MOST_NEAR = 12;

  /** Relative change of a parameter at which polishing ends; working value. */
  private static final double SMALL_STEP = 1e-13;

  /** Relative rise of a sum of squares that is rounding, where residuals are 1e-5 of the values. */
  private static final double NOISE = 1e-10;

  private Descent() {}

  /** Returns the parameters of the smallest sum found from {@code start}. */
  static double[] from(double[] start, Residuals residuals) {
    if (!Marquardt.down(start, residuals)) {
      theLongWay(start, residuals);
    }
    return polished(residuals);
  }

  private static void theLongWay(double[] start, Residuals residuals) {
    try {
      new LevenbergMarquardtOptimizer()
          .withCostRelativeTolerance(1e-14)
          .withParameterRelativeTolerance(1e-12)
          .withOrthoTolerance(1e-14)
          .optimize(
              LeastSquaresFactory.create(
                  at -> evaluated(residuals, at.toArray()),
                  new ArrayRealVector(residuals.size()),
                  new ArrayRealVector(start),
                  null,
                  MOST_EVALUATIONS,
                  MOST_EVALUATIONS));
    } catch (MathRuntimeException stalled) {
      // No further reduction possible, or out of evaluations: the best point is kept and judged.
    }
  }

  /** Returns copies of minus the residuals and of their Jacobian, the target being 0. */
  private static Pair<RealVector, RealMatrix> evaluated(Residuals residuals, double[] at) {
    residuals.evaluate(at);
    return new Pair<>(
        new ArrayRealVector(residuals.minusResiduals()),
        new Array2DRowRealMatrix(residuals.jacobian()));
  }

  /**
   * Returns the parameters of the minimum that {@code start} is close to, by Gauss-Newton steps
   * alone; from the beginning where these do not settle.
   */
  static double[] near(double[] start, Residuals residuals) {
    double[] at = start;
    for (int i = 0; i < MOST_NEAR; i++) {
      Linearised here = Linearised.at(at, residuals);
      if (here.isSingular()) {
        break;
      }
      double[] step = here.gaussNewtonStep();
      double[] next = shortened(at, step, here.cost(), residuals);
      if (next.length == 0) {
        break;
      }
      at = next;
      if (relativeSize(step, at) < SMALL_STEP) {
        return at;
      }
    }
    return from(start, residuals);
  }

  /** Returns the parameters after at most {@link #FEW} Gauss-Newton steps. */
  static double[] towards(double[] start, Residuals residuals) {
    double[] at = start;
    for (int i = 0; i < FEW; i++) {
      Linearised here = Linearised.at(at, residuals);
      double[] next =
          here.isSingular()
              ? new double[0]
              : shortened(at, here.gaussNewtonStep(), here.cost(), residuals);
      if (next.length == 0) {
        return at;
      }
      at = next;
    }
    return at;
  }

  private static double[] polished(Residuals residuals) {
    double[] at = residuals.best();
    for (int i = 0; i < MOST_POLISHING; i++) {
      Linearised here = Linearised.at(at, residuals);
      if (here.isSingular()) {
        return at;
      }
      double[] step = here.gaussNewtonStep();
      double[] next = shortened(at, step, here.cost(), residuals);
      if (next.length == 0) {
        return at;
      }
      at = next;
      if (relativeSize(step, at) < SMALL_STEP) {
        return at;
      }
    }
    return at;
  }

  /**
   * Returns the point after the step, halved until the sum does not rise; empty if it always does.
   */
  private static double[] shortened(double[] at, double[] step, double cost, Residuals residuals) {
    double length = 1;
    for (int half = 0; half < 12; half++) {
      double[] next = at.clone();
      for (int j = 0; j < at.length; j++) {
        next[j] += length * step[j];
      }
      if (residuals.evaluate(next) <= cost * (1 + NOISE)) {
        return next;
      }
      length /= 2;
    }
    return new double[0];
  }

  private static double relativeSize(double[] step, double[] at) {
    double most = 0;
    for (int j = 0; j < at.length; j++) {
      most = Math.max(most, Math.abs(step[j]) / Math.max(Math.abs(at[j]), 1e-300));
    }
    return most;
  }
}
