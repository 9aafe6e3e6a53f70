// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/**
 * {@code M = (c/r) ln(1 + e^(r (t - tb)))}; working parameters ln c, ln r, tb.
 *
 * <p>Source: Goudriaan and Monteith 1990, Ann. Bot. 66:695-701.
 */
final class ExpolinearShape implements Shape {
  @Override
  public double lnArea(double dat, double[] working, double[] gradient) {
    double r = Math.exp(working[1]);
    double v = r * (dat - working[2]);
    double g = lean(v);
    gradient[0] = 1;
    gradient[1] = v * g - 1;
    gradient[2] = -r * g;
    return working[0] - working[1] + Math.log(softplus(v));
  }

  @Override
  public double rgr(double dat, double[] working, double[] gradient) {
    double r = Math.exp(working[1]);
    double v = r * (dat - working[2]);
    double g = lean(v);
    double bend = g * (1 - sigma(v) - g);
    gradient[0] = 0;
    gradient[1] = r * (g + v * bend);
    gradient[2] = -r * r * bend;
    return r * g;
  }

  /** Returns the slope of ln softplus, 1 far below and 1/v far above. */
  private static double lean(double v) {
    return v < -700 ? 1 : sigma(v) / softplus(v);
  }

  private static double softplus(double v) {
    return v > 0 ? v + NearOne.lnOnePlus(Math.exp(-v)) : NearOne.lnOnePlus(Math.exp(v));
  }

  private static double sigma(double v) {
    return 1 / (1 + Math.exp(-v));
  }
}
