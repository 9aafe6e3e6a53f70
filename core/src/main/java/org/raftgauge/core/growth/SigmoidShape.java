// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/**
 * {@code ln M = ln A - ln(1 + v e^-u) / v} with {@code u = k (t - tm)}: Richards' family.
 *
 * <p>Shape v = 1 is the logistic, the limit v = 0 Gompertz, v = -1 the monomolecular curve, whose
 * tm is the day of area 0. Working parameters ln A, ln k, tm and, where free, ln v.
 *
 * <p>Source: Richards 1959, J. Exp. Bot. 10:290-300.
 */
final class SigmoidShape implements Shape {
  private static final int FREE_COUNT = 4;
  private final double fixedShape;

  /** Makes a family whose shape is {@code v} unless a fourth working parameter gives its log. */
  SigmoidShape(double v) {
    this.fixedShape = v;
  }

  @Override
  public double lnArea(double dat, double[] working, double[] gradient) {
    double k = Math.exp(working[1]);
    double u = k * (dat - working[2]);
    double v = shape(working);
    double drop = drop(u, v);
    // Gompertz's curve falls off its asymptote as steeply as it is below it.
    double slope = v == 0 ? drop : slope(u, v);
    gradient[0] = 1;
    gradient[1] = slope * u;
    gradient[2] = -k * slope;
    if (working.length == FREE_COUNT) {
      gradient[3] = drop - slope;
    }
    return working[0] - drop;
  }

  @Override
  public void lnAreas(double[] dat, double[] working, double[] out) {
    double k = Math.exp(working[1]);
    double v = shape(working);
    for (int i = 0; i < dat.length; i++) {
      out[i] = working[0] - drop(k * (dat[i] - working[2]), v);
    }
  }

  @Override
  public double rgr(double dat, double[] working, double[] gradient) {
    double k = Math.exp(working[1]);
    double u = k * (dat - working[2]);
    double v = shape(working);
    double p = slope(u, v);
    double bend = -p * (1 - v * p);
    gradient[0] = 0;
    gradient[1] = k * (p + bend * u);
    gradient[2] = -k * k * bend;
    if (working.length == FREE_COUNT) {
      gradient[3] = -k * v * p * p;
    }
    return k * p;
  }

  private double shape(double[] working) {
    return working.length == FREE_COUNT ? Math.exp(working[3]) : fixedShape;
  }

  /** Returns {@code ln(1 + v e^-u) / v}; not finite where the curve is not above 0. */
  private static double drop(double u, double v) {
    if (v == 0) {
      return Math.exp(-u);
    }
    if (v > 0 && -u > 30) {
      return (Math.log(v) - u + NearOne.lnOnePlus(Math.exp(u) / v)) / v;
    }
    return NearOne.lnOnePlus(v * Math.exp(-u)) / v;
  }

  /** Returns {@code e^-u / (1 + v e^-u)}, the slope of ln M by u. */
  private static double slope(double u, double v) {
    return v == 0 ? Math.exp(-u) : 1 / (Math.exp(u) + v);
  }
}
