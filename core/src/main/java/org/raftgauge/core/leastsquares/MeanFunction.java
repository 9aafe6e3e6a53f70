// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/** A mean as a function of one variable and some parameters, with its partial derivatives. */
@FunctionalInterface
public interface MeanFunction {
  /**
   * Returns the mean at {@code x}.
   *
   * @param x the variable
   * @param parameters values of the parameters; must not be written
   * @param gradient receives the partial derivative by each parameter; same length
   * @return the mean; a value that is not finite means that the parameters are outside the domain
   */
  double at(double x, double[] parameters, double[] gradient);
}
