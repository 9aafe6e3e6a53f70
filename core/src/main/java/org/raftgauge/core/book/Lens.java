// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * A pinhole camera with Brown-Conrady distortion, in the order k1 k2 p1 p2 k3.
 *
 * @param fxPx focal length along x, px, above 0
 * @param fyPx focal length along y, px, above 0
 * @param cxPx principal point, px
 * @param cyPx principal point, px
 * @param k1 radial
 * @param k2 radial
 * @param p1 tangential
 * @param p2 tangential
 * @param k3 radial
 */
public record Lens(
    double fxPx,
    double fyPx,
    double cxPx,
    double cyPx,
    double k1,
    double k2,
    double p1,
    double p2,
    double k3) {

  /** Checks that the focal lengths are above 0. */
  public Lens {
    if (!(fxPx > 0) || !(fyPx > 0)) {
      throw new IllegalArgumentException("focal lengths must be > 0 px, got " + fxPx + ", " + fyPx);
    }
  }

  /** Says whether it was calibrated: a lens whose distortion is not known was not. */
  public boolean isCalibrated() {
    return k1 != 0 || k2 != 0 || p1 != 0 || p2 != 0 || k3 != 0;
  }

  /**
   * Returns the same lens for a picture of another size of the same view.
   *
   * @param factor new width over old width, above 0
   * @return the scaled lens
   */
  public Lens scaled(double factor) {
    return new Lens(
        fxPx * factor,
        fyPx * factor,
        (cxPx + 0.5) * factor - 0.5,
        (cyPx + 0.5) * factor - 0.5,
        k1,
        k2,
        p1,
        p2,
        k3);
  }
}
