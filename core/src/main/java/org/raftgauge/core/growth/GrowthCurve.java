// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.ArrayList;
import java.util.List;

/**
 * A growth curve with its parameters.
 *
 * @param model which curve
 * @param parameters in the order and units of {@link CurveModel#parameterNames}
 */
public record GrowthCurve(CurveModel model, List<Double> parameters) {
  /**
   * Checks the parameters.
   *
   * @throws IllegalArgumentException if their number is wrong, one is not finite, or one that must
   *     be above 0 is not
   */
  public GrowthCurve {
    parameters = List.copyOf(parameters);
    if (parameters.size() != model.parameterCount()) {
      throw new IllegalArgumentException(
          model + " needs parameters " + model.parameterNames() + ", got " + parameters);
    }
    for (int i = 0; i < parameters.size(); i++) {
      double value = parameters.get(i);
      if (!Double.isFinite(value) || (model.isLogged(i) && !(value > 0))) {
        throw new IllegalArgumentException(
            model.parameterNames().get(i)
                + " must be finite"
                + (model.isLogged(i) ? " and > 0" : "")
                + ", got "
                + value);
      }
    }
  }

  /** Makes a curve from working parameters. */
  public static GrowthCurve ofWorking(CurveModel model, double[] working) {
    List<Double> parameters = new ArrayList<>();
    for (int i = 0; i < model.parameterCount(); i++) {
      parameters.add(model.parameter(i, working));
    }
    return new GrowthCurve(model, parameters);
  }

  /** Returns the working parameters. */
  public double[] working() {
    return model.toWorking(parameters);
  }

  /** Returns ln area in cm2 at {@code dat}; not finite where the curve is not above 0. */
  public double lnArea(double dat) {
    return model.lnArea(dat, working(), new double[model.parameterCount()]);
  }

  /** Returns area in cm2 at {@code dat}. */
  public double areaCm2(double dat) {
    return Math.exp(lnArea(dat));
  }

  /** Returns the relative growth rate per day at {@code dat}. */
  public double rgrPerDay(double dat) {
    return model.rgrPerDay(dat, working(), new double[model.parameterCount()]);
  }
}
