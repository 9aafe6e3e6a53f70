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
    double softplus = softplus(v);
    double g = lean(v, softplus);
    gradient[0] = 1;
    gradient[1] = v * g - 1;
    gradient[2] = -r * g;
    return working[0] - working[1] + Math.log(softplus);
  }

  @Override
  public void lnAreas(double[] dat, double[] working, double[] out) {
    double r = Math.exp(working[1]);
    for (int i = 0; i < dat.length; i++) {
      out[i] = working[0] - working[1] + Math.log(softplus(r * (dat[i] - working[2])));
    }
  }

  @Override
  public double rgr(double dat, double[] working, double[] gradient) {
    double r = Math.exp(working[1]);
    double v = r * (dat - working[2]);
    double g = lean(v, softplus(v));
    double bend = g * (1 - sigma(v) - g);
    gradient[0] = 0;
    gradient[1] = r * (g + v * bend);
    gradient[2] = -r * r * bend;
    return r * g;
  }

  /** Returns the slope of ln softplus, 1 far below and 1/v far above. */
  private static double lean(double v, double softplus) {
    return v < -700 ? 1 : sigma(v) / softplus;
  }

  private static double softplus(double v) {
    return v > 0 ? v + NearOne.lnOnePlus(Math.exp(-v)) : NearOne.lnOnePlus(Math.exp(v));
  }

  private static double sigma(double v) {
    return 1 / (1 + Math.exp(-v));
  }
}
