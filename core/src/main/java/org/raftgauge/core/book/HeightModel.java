// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * How high a plant's canopy stands, from its projected area: {@code mean height = scaleMm * areaCm2
 * ^ exponent}.
 *
 * @param scaleMm mm, at least 0
 * @param exponent 0 to 2
 * @param meanToTop mean height of the top surface over the height a ruler gives, above 0 to 1
 */
public record HeightModel(double scaleMm, double exponent, double meanToTop) {

  /** Checks the ranges. */
  public HeightModel {
    if (!(scaleMm >= 0)
        || !(exponent >= 0 && exponent <= 2)
        || !(meanToTop > 0 && meanToTop <= 1)) {
      throw new IllegalArgumentException(
          "height model out of range: " + scaleMm + ", " + exponent + ", " + meanToTop);
    }
  }

  /**
   * Returns the mean height of the plant's top surface over the deck.
   *
   * @param areaCm2 projected leaf area, cm2, at least 0
   * @return mm
   */
  public double meanHeightMm(double areaCm2) {
    return areaCm2 <= 0 ? 0 : scaleMm * Math.pow(areaCm2, exponent);
  }
}
