// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.Map;
import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.util.FastMath;

/** The curves of the NIST StRD nonlinear sets, differentiated automatically by Hipparchus. */
final class NistModels {
  private interface Formula {
    Gradient at(double x, Gradient[] b);
  }

  private static final Map<String, Formula> FORMULAS =
      Map.ofEntries(
          Map.entry("Rat42", (x, b) -> b[0].divide(b[1].subtract(b[2].multiply(x)).exp().add(1))),
          Map.entry(
              "Rat43",
              (x, b) ->
                  b[0].divide(b[1].subtract(b[2].multiply(x)).exp().add(1).pow(b[3].reciprocal()))),
          Map.entry(
              "MGH09",
              (x, b) ->
                  b[0].multiply(b[1].multiply(x).add(x * x))
                      .divide(b[2].multiply(x).add(x * x).add(b[3]))),
          Map.entry("MGH10", (x, b) -> b[0].multiply(b[1].divide(b[2].add(x)).exp())),
          Map.entry("MGH17", (x, b) -> b[0].add(decay(x, b[1], b[3])).add(decay(x, b[2], b[4]))),
          Map.entry("Misra1a", (x, b) -> b[0].subtract(decay(x, b[0], b[1]))),
          Map.entry("BoxBOD", (x, b) -> b[0].subtract(decay(x, b[0], b[1]))),
          Map.entry(
              "Misra1b",
              (x, b) -> b[0].subtract(b[0].divide(b[1].multiply(x / 2).add(1).square()))),
          Map.entry(
              "Misra1d", (x, b) -> b[0].multiply(b[1]).multiply(x).divide(b[1].multiply(x).add(1))),
          Map.entry("DanWood", (x, b) -> b[0].multiply(b[1].multiply(FastMath.log(x)).exp())),
          Map.entry("Thurber", NistModels::cubics),
          Map.entry("Hahn1", NistModels::cubics),
          Map.entry("Chwirut1", NistModels::chwirut),
          Map.entry("Chwirut2", NistModels::chwirut),
          Map.entry(
              "Eckerle4",
              (x, b) ->
                  b[0].divide(b[1])
                      .multiply(b[2].subtract(x).divide(b[1]).square().multiply(-0.5).exp())),
          Map.entry(
              "Kirby2",
              (x, b) ->
                  b[0].add(b[1].multiply(x))
                      .add(b[2].multiply(x * x))
                      .divide(b[3].multiply(x).add(b[4].multiply(x * x)).add(1))),
          Map.entry(
              "Lanczos3",
              (x, b) -> decay(x, b[0], b[1]).add(decay(x, b[2], b[3])).add(decay(x, b[4], b[5]))),
          Map.entry(
              "Bennett5", (x, b) -> b[0].multiply(b[1].add(x).log().divide(b[2]).negate().exp())),
          Map.entry(
              "Roszman1",
              (x, b) ->
                  b[0].subtract(b[1].multiply(x))
                      .subtract(b[2].divide(b[3].negate().add(x)).atan().divide(FastMath.PI))));

  private NistModels() {}

  /** Returns the curve of a set. */
  static MeanFunction of(String set) {
    Formula formula = FORMULAS.get(set);
    return (x, parameters, gradient) -> {
      Gradient[] b = new Gradient[parameters.length];
      for (int j = 0; j < b.length; j++) {
        b[j] = Gradient.variable(b.length, j, parameters[j]);
      }
      Gradient value = formula.at(x, b);
      System.arraycopy(value.getGradient(), 0, gradient, 0, b.length);
      return value.getValue();
    };
  }

  private static Gradient decay(double x, Gradient height, Gradient rate) {
    return height.multiply(rate.multiply(-x).exp());
  }

  private static Gradient chwirut(double x, Gradient[] b) {
    return b[0].multiply(-x).exp().divide(b[1].add(b[2].multiply(x)));
  }

  private static Gradient cubics(double x, Gradient[] b) {
    Gradient over = b[0].add(b[1].multiply(x)).add(b[2].multiply(x * x));
    Gradient under = b[4].multiply(x).add(b[5].multiply(x * x)).add(1);
    return over.add(b[3].multiply(x * x * x)).divide(under.add(b[6].multiply(x * x * x)));
  }
}
