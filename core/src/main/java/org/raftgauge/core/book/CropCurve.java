// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * The growth curve that the book gives a crop: area in cm2 by days after transplant. It is used
 * only where there are neither past cycles nor other rafts to compare with.
 *
 * @param model which curve
 * @param parameters in the order of {@link Model#keys}
 */
public record CropCurve(Model model, List<Double> parameters) {

  /** Copies the parameters. */
  public CropCurve {
    parameters = List.copyOf(parameters);
    if (parameters.size() != model.keys().size()) {
      throw new IllegalArgumentException(model + " needs " + model.keys() + ", got " + parameters);
    }
  }

  /** The curves that can be written in the book. */
  public enum Model {
    /** {@code start_cm2 exp(rate t)}. */
    EXPONENTIAL("start_cm2", "rate_per_day"),
    /** {@code asymptote / (1 + exp(-rate (t - midpoint)))}. */
    LOGISTIC("asymptote_cm2", "rate_per_day", "midpoint_dat"),
    /** {@code asymptote exp(-exp(-rate (t - midpoint)))}. */
    GOMPERTZ("asymptote_cm2", "rate_per_day", "midpoint_dat"),
    /** {@code growth / rate ln(1 + exp(rate (t - lag_end)))}. */
    EXPOLINEAR("linear_growth_cm2_per_day", "rate_per_day", "lag_end_dat");

    @SuppressWarnings("ImmutableEnumChecker") // an unmodifiable list
    private final List<String> keys;

    Model(String... keys) {
      this.keys = List.of(keys);
    }

    /** Returns the names of the parameters, units last. */
    public List<String> keys() {
      return keys;
    }
  }
}
