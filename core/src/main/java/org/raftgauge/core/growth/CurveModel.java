// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.List;

/**
 * The growth curves: area M at day t.
 *
 * <p>Each is written in <em>parameters</em> (what is reported) and in <em>working parameters</em>
 * (what is fitted: logarithms of what must be above 0). The first working parameter is the log of a
 * scale, so that ln M is that log plus a shape.
 *
 * <p>Sources: Hunt 1982, Plant Growth Curves; Richards 1959, J. Exp. Bot. 10:290-300; Goudriaan and
 * Monteith 1990, Ann. Bot. 66:695-701; derivatives derived here and checked against differences.
 */
public enum CurveModel {
  /** {@code M = M0 exp(r t)}: {@code start_cm2}, {@code rate_per_day}. */
  EXPONENTIAL,
  /** {@code M = K (1 - exp(-r (t - t0)))}, that is {@code K - (K - M0) exp(-r t)}. */
  MONOMOLECULAR,
  /** {@code M = A / (1 + exp(-k (t - tm)))}. */
  LOGISTIC,
  /** {@code M = A exp(-exp(-k (t - tm)))}. */
  GOMPERTZ,
  /** {@code M = A / (1 + v exp(-k (t - tm)))^(1/v)}. */
  RICHARDS,
  /** {@code M = (c/r) ln(1 + exp(r (t - tb)))}: exponential, then linear. */
  EXPOLINEAR;

  private static final Shape EXPONENTIAL_SHAPE = new ExponentialShape();
  private static final Shape MONOMOLECULAR_SHAPE = new SigmoidShape(-1);
  private static final Shape LOGISTIC_SHAPE = new SigmoidShape(1);
  private static final Shape GOMPERTZ_SHAPE = new SigmoidShape(0);
  private static final Shape EXPOLINEAR_SHAPE = new ExpolinearShape();

  /** Returns the names of the parameters, units last. */
  public List<String> parameterNames() {
    return switch (this) {
      case EXPONENTIAL -> List.of("start_cm2", "rate_per_day");
      case MONOMOLECULAR -> List.of("asymptote_cm2", "rate_per_day", "zero_dat");
      case LOGISTIC, GOMPERTZ -> List.of("asymptote_cm2", "rate_per_day", "midpoint_dat");
      case RICHARDS -> List.of("asymptote_cm2", "rate_per_day", "midpoint_dat", "shape");
      case EXPOLINEAR -> List.of("linear_growth_cm2_per_day", "rate_per_day", "lag_end_dat");
    };
  }

  /** Returns the number of parameters. */
  public int parameterCount() {
    return switch (this) {
      case EXPONENTIAL -> 2;
      case MONOMOLECULAR, LOGISTIC, GOMPERTZ, EXPOLINEAR -> 3;
      case RICHARDS -> 4;
    };
  }

  /** Returns whether the curve levels off at its first parameter. */
  public boolean hasAsymptote() {
    return this != EXPONENTIAL && this != EXPOLINEAR;
  }

  /** Returns whether the working parameter is the log of parameter {@code i}, above 0 then. */
  boolean isLogged(int i) {
    return switch (i) {
      case 0, 3 -> true;
      case 1 -> this != EXPONENTIAL;
      default -> false;
    };
  }

  /** Returns its family. */
  Shape shape() {
    return switch (this) {
      case EXPONENTIAL -> EXPONENTIAL_SHAPE;
      case MONOMOLECULAR -> MONOMOLECULAR_SHAPE;
      case LOGISTIC, RICHARDS -> LOGISTIC_SHAPE;
      case GOMPERTZ -> GOMPERTZ_SHAPE;
      case EXPOLINEAR -> EXPOLINEAR_SHAPE;
    };
  }

  /**
   * Returns ln area in cm2.
   *
   * @param dat days after transplant
   * @param working working parameters
   * @param gradient receives the derivatives by the working parameters
   * @return ln area; not finite where the curve is not above 0
   */
  public double lnArea(double dat, double[] working, double[] gradient) {
    return shape().lnArea(dat, working, gradient);
  }

  /**
   * Returns the relative growth rate per day, {@code dM/dt / M}.
   *
   * @param dat days after transplant
   * @param working working parameters
   * @param gradient receives the derivatives by the working parameters
   */
  public double rgrPerDay(double dat, double[] working, double[] gradient) {
    return shape().rgr(dat, working, gradient);
  }

  /** Returns working parameters from parameters, logarithms taken where they must be above 0. */
  public double[] toWorking(List<Double> parameters) {
    double[] working = new double[parameterCount()];
    for (int i = 0; i < working.length; i++) {
      working[i] = isLogged(i) ? Math.log(parameters.get(i)) : parameters.get(i);
    }
    return working;
  }

  /** Returns parameter {@code i} from working parameters. */
  double parameter(int i, double[] working) {
    return isLogged(i) ? Math.exp(working[i]) : working[i];
  }

  /**
   * Returns the derivative of parameter {@code i} by its working parameter.
   *
   * @param i index into {@link #parameterNames}
   * @param working the working parameters
   */
  public double parameterSlope(int i, double[] working) {
    return isLogged(i) ? Math.exp(working[i]) : 1;
  }
}
