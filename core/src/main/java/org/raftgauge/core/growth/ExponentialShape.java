// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/** {@code ln M = ln M0 + r t}; working parameters ln M0 and r. */
final class ExponentialShape implements Shape {
  @Override
  public double lnArea(double dat, double[] working, double[] gradient) {
    gradient[0] = 1;
    gradient[1] = dat;
    return working[0] + working[1] * dat;
  }

  @Override
  public void lnAreas(double[] dat, double[] working, double[] out) {
    for (int i = 0; i < dat.length; i++) {
      out[i] = working[0] + working[1] * dat[i];
    }
  }

  @Override
  public double rgr(double dat, double[] working, double[] gradient) {
    gradient[0] = 0;
    gradient[1] = 1;
    return working[1];
  }
}
