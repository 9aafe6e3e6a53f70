// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * The circle that places lie on as well as on any, and how far off it they are.
 *
 * <p>Source: Kasa 1976, IEEE Trans. Instrum. Meas. 25:8-14: least squares of x^2 + y^2 + a x + b y
 * + c, solved in one pass about the first place.
 */
final class FittedCircle {
  private int n;
  private double firstX;
  private double firstY;
  private double sx;
  private double sy;
  private double sz;
  private double sxx;
  private double sxy;
  private double syy;
  private double sxz;
  private double syz;
  private double szz;

  /** Adds a place, px. */
  void add(double xPx, double yPx) {
    if (n++ == 0) {
      firstX = xPx;
      firstY = yPx;
    }
    double x = xPx - firstX;
    double y = yPx - firstY;
    double z = x * x + y * y;
    sx += x;
    sy += y;
    sz += z;
    sxx += x * x;
    sxy += x * y;
    syy += y * y;
    sxz += x * z;
    syz += y * z;
    szz += z * z;
  }

  /**
   * Returns how far places are off the circle, as a share of its radius (root mean square);
   * infinite where they lie on no circle.
   */
  double unevenness() {
    double xx = sxx - sx * sx / n;
    double xy = sxy - sx * sy / n;
    double yy = syy - sy * sy / n;
    double xz = sxz - sx * sz / n;
    double yz = syz - sy * sz / n;
    double zz = szz - sz * sz / n;
    double det = xx * yy - xy * xy;
    if (n < 4 || !(det > 1e-9 * xx * yy)) {
      return Double.POSITIVE_INFINITY;
    }
    double a = (xz * yy - yz * xy) / det;
    double b = (yz * xx - xz * xy) / det;
    // r^2 - R^2 is 2 R (r - R) near the circle.
    double square = Math.max(0, zz - a * xz - b * yz) / n;
    double radius2 = (sz - a * sx - b * sy) / n + (a * a + b * b) / 4;
    return Math.sqrt(square) / (2 * radius2);
  }
}
