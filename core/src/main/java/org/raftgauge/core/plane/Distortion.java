// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/**
 * Brown-Conrady lens: between rays (x/z, y/z before the lens) and photo px.
 *
 * <p>Source: Brown 1971, Close-range camera calibration, Photogramm. Eng. 37:855-866; order and
 * signs of the terms as in OpenCV. The way back is Newton's method.
 */
public final class Distortion {
  private static final int MAX_ROUNDS = 30;
  private static final double CLOSE = 1e-12;

  private Distortion() {}

  /**
   * Returns the photo place of a ray.
   *
   * @param lens the lens
   * @param x x/z of the ray before the lens
   * @param y y/z of the ray before the lens
   * @return its place, px
   */
  public static PointPx toPhoto(Lens lens, double x, double y) {
    double[] d = bent(lens, x, y);
    return new PointPx(lens.fxPx() * d[0] + lens.cxPx(), lens.fyPx() * d[1] + lens.cyPx());
  }

  /**
   * Returns the ray of a photo place.
   *
   * @param lens the lens
   * @param p the place, px
   * @return x/z and y/z before the lens
   */
  public static double[] toRay(Lens lens, PointPx p) {
    double tx = (p.xPx() - lens.cxPx()) / lens.fxPx();
    double ty = (p.yPx() - lens.cyPx()) / lens.fyPx();
    double x = tx;
    double y = ty;
    for (int round = 0; round < MAX_ROUNDS; round++) {
      double[] d = bent(lens, x, y);
      double[] j = jacobian(lens, x, y);
      double det = j[0] * j[3] - j[1] * j[2];
      if (!(Math.abs(det) > 1e-6)) {
        break;
      }
      double ex = tx - d[0];
      double ey = ty - d[1];
      x += (j[3] * ex - j[1] * ey) / det;
      y += (j[0] * ey - j[2] * ex) / det;
      if (Math.abs(ex) + Math.abs(ey) < CLOSE) {
        break;
      }
    }
    return new double[] {x, y};
  }

  private static double[] bent(Lens lens, double x, double y) {
    double r2 = x * x + y * y;
    double radial = 1 + r2 * (lens.k1() + r2 * (lens.k2() + r2 * lens.k3()));
    return new double[] {
      x * radial + 2 * lens.p1() * x * y + lens.p2() * (r2 + 2 * x * x),
      y * radial + lens.p1() * (r2 + 2 * y * y) + 2 * lens.p2() * x * y
    };
  }

  /** Returns {dxd/dx, dxd/dy, dyd/dx, dyd/dy}. */
  private static double[] jacobian(Lens lens, double x, double y) {
    double r2 = x * x + y * y;
    double radial = 1 + r2 * (lens.k1() + r2 * (lens.k2() + r2 * lens.k3()));
    double slope = 2 * (lens.k1() + r2 * (2 * lens.k2() + r2 * 3 * lens.k3()));
    double cross = slope * x * y + 2 * lens.p1() * x + 2 * lens.p2() * y;
    return new double[] {
      radial + slope * x * x + 2 * lens.p1() * y + 6 * lens.p2() * x,
      cross,
      cross,
      radial + slope * y * y + 6 * lens.p1() * y + 2 * lens.p2() * x
    };
  }
}
