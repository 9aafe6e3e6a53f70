// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.leastsquares.MeanFunction;

/** A growth curve as the mean that is fitted, on ln area or on area. */
final class CurveMean {
  private CurveMean() {}

  static MeanFunction of(CurveModel model, Scale scale) {
    if (scale == Scale.LN_AREA) {
      return model.shape()::lnArea;
    }
    return (dat, working, gradient) -> {
      double area = Math.exp(model.lnArea(dat, working, gradient));
      for (int j = 0; j < gradient.length; j++) {
        gradient[j] *= area;
      }
      return area;
    };
  }

  /**
   * Returns the mean in other parameters: the first working parameter, the log of the scale, gives
   * way to the day on which the curve reaches {@code target} cm2.
   */
  static MeanFunction through(CurveModel model, Scale scale, double target) {
    MeanFunction plain = of(model, scale);
    return (dat, parameters, gradient) -> {
      double[] working = parameters.clone();
      working[0] = 0;
      double[] atTarget = new double[working.length];
      double shape = model.lnArea(parameters[0], working, atTarget);
      double rgr = model.rgrPerDay(parameters[0], working, new double[working.length]);
      working[0] = Math.log(target) - shape;
      double value = plain.at(dat, working, gradient);
      double byScale = gradient[0];
      gradient[0] = -byScale * rgr;
      for (int j = 1; j < gradient.length; j++) {
        gradient[j] -= byScale * atTarget[j];
      }
      return value;
    };
  }
}
