// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.raftgauge.core.growth.CurveModel;

/** A cohort's working parameters with their error covariance, the spread of plants, likelihood. */
final class Estimated {
  private final CurveModel model;
  private final double[] theta;
  private final double[][] error;
  private final Spread spread;

  Estimated(CurveModel model, double[] theta, double[][] error, Spread spread) {
    this.model = model;
    this.theta = theta;
    this.error = error;
    this.spread = spread;
  }

  CurveModel model() {
    return model;
  }

  double[] theta() {
    return theta;
  }

  double[][] error() {
    return error;
  }

  Spread spread() {
    return spread;
  }
}
