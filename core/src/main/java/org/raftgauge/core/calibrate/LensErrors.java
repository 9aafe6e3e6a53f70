// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

/**
 * Standard errors of a lens, from the curvature of the least-squares fit and its residuals; 0 for
 * what was not fitted.
 *
 * @param fxPx of the focal length along x, px
 * @param fyPx of the focal length along y, px
 * @param cxPx of the principal point, px
 * @param cyPx of the principal point, px
 * @param k1 of the radial term
 * @param k2 of the radial term
 * @param p1 of the tangential term
 * @param p2 of the tangential term
 * @param k3 of the radial term
 */
public record LensErrors(
    double fxPx,
    double fyPx,
    double cxPx,
    double cyPx,
    double k1,
    double k2,
    double p1,
    double p2,
    double k3) {}
