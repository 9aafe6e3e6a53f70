// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * The plane-to-plane map through four places: photo px (lens taken out) to deck mm.
 *
 * <p>Source: direct linear transform, Hartley and Zisserman 2004, section 4.1, with the last entry
 * set to 1.
 */
public final class Homography {
  private final double[] h;

  private Homography(double[] h) {
    this.h = h;
  }

  /**
   * Returns the map through four pairs of places.
   *
   * @param photo four places in the photo, no three in line
   * @param deck their places on the deck
   * @return the map
   * @throws IllegalArgumentException if there are not four pairs, or three lie in line
   */
  public static Homography through(List<PointPx> photo, List<PointMm> deck) {
    if (photo.size() != 4 || deck.size() != 4) {
      throw new IllegalArgumentException(
          "map needs four pairs, got " + photo.size() + " and " + deck.size());
    }
    double[][] a = new double[8][];
    double[] b = new double[8];
    for (int i = 0; i < 4; i++) {
      double u = photo.get(i).xPx();
      double v = photo.get(i).yPx();
      double x = deck.get(i).xMm();
      double y = deck.get(i).yMm();
      a[2 * i] = new double[] {u, v, 1, 0, 0, 0, -u * x, -v * x};
      a[2 * i + 1] = new double[] {0, 0, 0, u, v, 1, -u * y, -v * y};
      b[2 * i] = x;
      b[2 * i + 1] = y;
    }
    return new Homography(solve(MatrixUtils.createRealMatrix(a), b));
  }

  private static double[] solve(RealMatrix a, double[] b) {
    LUDecomposition lu = new LUDecomposition(a, 1e-12);
    if (!lu.getSolver().isNonSingular()) {
      throw new IllegalArgumentException("three of the four places lie in line");
    }
    double[] h =
        java.util.Arrays.copyOf(lu.getSolver().solve(new ArrayRealVector(b, false)).toArray(), 9);
    h[8] = 1;
    return h;
  }

  /** Returns the matrix, row by row, 9 numbers, the last 1. */
  public double[] matrix() {
    return h.clone();
  }

  /**
   * Returns the deck place of a photo place.
   *
   * @param p a place in the photo, lens taken out
   * @return its place on the deck
   */
  public PointMm toDeck(PointPx p) {
    double w = h[6] * p.xPx() + h[7] * p.yPx() + h[8];
    return new PointMm(
        (h[0] * p.xPx() + h[1] * p.yPx() + h[2]) / w, (h[3] * p.xPx() + h[4] * p.yPx() + h[5]) / w);
  }

  /**
   * Returns the deck area that a photo px covers: {@code det(H) / w^3}.
   *
   * @param p a place in the photo
   * @return mm2 per px2
   */
  public double mm2PerPx2(PointPx p) {
    double w = h[6] * p.xPx() + h[7] * p.yPx() + h[8];
    double det =
        h[0] * (h[4] * h[8] - h[5] * h[7])
            - h[1] * (h[3] * h[8] - h[5] * h[6])
            + h[2] * (h[3] * h[7] - h[4] * h[6]);
    return Math.abs(det / (w * w * w));
  }
}
