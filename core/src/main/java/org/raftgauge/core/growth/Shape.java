// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/** One family of curves in working parameters: ln area and relative growth rate with gradients. */
sealed interface Shape permits ExponentialShape, SigmoidShape, ExpolinearShape {
  /** Returns ln area at a day and writes its derivatives by the working parameters. */
  double lnArea(double dat, double[] working, double[] gradient);

  /** Writes what {@link #lnArea(double, double[], double[])} returns at each day to {@code out}. */
  void lnAreas(double[] dat, double[] working, double[] out);

  /** Returns the relative growth rate at a day and writes its derivatives. */
  double rgr(double dat, double[] working, double[] gradient);
}
