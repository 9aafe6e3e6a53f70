// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

/**
 * The shape of one leaf.
 *
 * @param outline of the blade
 * @param lengthMm petiole and blade along the rib, mm
 * @param halfWidthMm of the blade where widest, mm
 * @param petioleShare share of the length that is petiole, 0..0.8
 * @param surface how the blade leaves its plane
 */
record LeafForm(
    Outline outline, double lengthMm, double halfWidthMm, double petioleShare, Surface surface) {

  /**
   * How a blade leaves its plane.
   *
   * @param cupRad angle through which each half is rolled, up positive, radians
   * @param ruffle height of the waves at the margin over the half width
   * @param waves number of waves along the margin
   * @param blister height of the bumps between the veins over the half width
   * @param forward how far the margin reaches forward of the rib, over the half width
   */
  record Surface(double cupRad, double ruffle, double waves, double blister, double forward) {}
}
