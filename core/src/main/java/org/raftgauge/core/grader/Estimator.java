// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.Arrays;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.agreement.Robust;

/** How the numbers of a model are found. */
enum Estimator {
  /** Every weighing counts the same. */
  LEAST_SQUARES("least squares"),
  /** Weighings far from the rest count less: Tukey's bisquare. */
  BISQUARE("bisquare");

  private final String words;

  Estimator(String words) {
    this.words = words;
  }

  @Override
  public String toString() {
    return words;
  }

  /** Returns the weight of each weighing, 0..1. */
  double[] weights(double[][] design, double[] y) {
    if (this == BISQUARE) {
      return Robust.bisquareWeights(design, y);
    }
    double[] ones = new double[y.length];
    Arrays.fill(ones, 1);
    return ones;
  }

  /**
   * Returns the errors of leaving one weighing out, its own weight and those of the others held as
   * they are; exact for least squares.
   */
  double[] leaveOneOut(double[][] design, double[] y) {
    double[] weights = weights(design, y);
    LinearFit fit = LinearFit.weighted(design, y, weights);
    double[] errors = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      double leverage = weights[i] * LinearFit.form(design[i], fit.unscaledCovariance(), design[i]);
      double residual = y[i] - LinearFit.dot(design[i], fit.coefficients());
      errors[i] = residual / Math.max(1e-9, 1 - leverage);
    }
    return errors;
  }
}
