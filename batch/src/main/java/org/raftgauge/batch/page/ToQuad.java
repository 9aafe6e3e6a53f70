// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.geom.Point2D;
import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * Maps the unit square onto a quadrilateral by the projective map of its corners.
 *
 * <p>Source: P. Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989, section 2.2.3:
 * {@code x = (a u + b v + c) / (g u + h v + 1)}, {@code y = (d u + e v + f) / (g u + h v + 1)}.
 *
 * @param a of x
 * @param b of x
 * @param c of x
 * @param d of y
 * @param e of y
 * @param f of y
 * @param g of both
 * @param h of both
 */
record ToQuad(double a, double b, double c, double d, double e, double f, double g, double h) {

  /** Returns the map of (0, 0), (1, 0), (1, 1), (0, 1) onto four corners in that order. */
  static ToQuad of(List<PointPx> corners) {
    PointPx p0 = corners.get(0);
    PointPx p1 = corners.get(1);
    PointPx p2 = corners.get(2);
    PointPx p3 = corners.get(3);
    double dx1 = p1.xPx() - p2.xPx();
    double dy1 = p1.yPx() - p2.yPx();
    double dx2 = p3.xPx() - p2.xPx();
    double dy2 = p3.yPx() - p2.yPx();
    double sx = p0.xPx() - p1.xPx() + p2.xPx() - p3.xPx();
    double sy = p0.yPx() - p1.yPx() + p2.yPx() - p3.yPx();
    double below = dx1 * dy2 - dx2 * dy1;
    double g = (sx * dy2 - dx2 * sy) / below;
    double h = (dx1 * sy - sx * dy1) / below;
    return new ToQuad(
        p1.xPx() - p0.xPx() + g * p1.xPx(),
        p3.xPx() - p0.xPx() + h * p3.xPx(),
        p0.xPx(),
        p1.yPx() - p0.yPx() + g * p1.yPx(),
        p3.yPx() - p0.yPx() + h * p3.yPx(),
        p0.yPx(),
        g,
        h);
  }

  /** Returns where a place of the unit square falls. */
  Point2D.Double at(double u, double v) {
    double w = g * u + h * v + 1;
    return new Point2D.Double((a * u + b * v + c) / w, (d * u + e * v + f) / w);
  }
}
