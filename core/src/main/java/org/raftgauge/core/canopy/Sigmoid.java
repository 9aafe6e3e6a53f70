// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** The logistic step {@code 1 / (1 + exp(-x))}. */
final class Sigmoid {
  /** Past this, both ways, the step is flat to 1e-13. */
  private static final double FLAT = 30;

  private Sigmoid() {}

  static double of(double x) {
    return 1 / (1 + Math.exp(-Math.max(-FLAT, Math.min(FLAT, x))));
  }
}
