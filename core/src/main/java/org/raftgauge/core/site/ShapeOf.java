// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import org.raftgauge.core.opencv.TraceOutline;
import org.raftgauge.core.pixels.PointPx;

/**
 * Measures an outline.
 *
 * <p>Perimeter: chain code weighted 0.980 a straight step, 1.406 a diagonal, minus 0.091 a corner
 * (Vossepoel and Smeulders 1982, Computer Graphics and Image Processing 20:347-364; from memory),
 * which is unbiased for straight edges of any direction. Largest diameter: over the corners of the
 * convex hull, plus one pixel for the two half pixels at its ends.
 */
final class ShapeOf {
  private final List<PointPx> outline;
  private final List<PointPx> hull;

  private ShapeOf(List<PointPx> outline) {
    this.outline = outline;
    this.hull = TraceOutline.hull(outline);
  }

  /** Takes the longest of outlines, at least one. */
  static ShapeOf longest(List<List<PointPx>> outlines) {
    List<PointPx> longest = outlines.get(0);
    for (List<PointPx> o : outlines) {
      longest = o.size() > longest.size() ? o : longest;
    }
    return new ShapeOf(longest);
  }

  /** Returns the hull about all outlines, at least one, as the shape of one plant in pieces. */
  static ShapeOf about(List<List<PointPx>> outlines) {
    return new ShapeOf(outlines.stream().flatMap(List::stream).toList());
  }

  /** Returns the length of all outlines together, px. */
  static double perimeterPx(List<List<PointPx>> outlines) {
    return outlines.stream().mapToDouble(o -> new ShapeOf(o).perimeterPx()).sum();
  }

  double perimeterPx() {
    double sum = 0;
    int n = outline.size();
    int before = -1;
    for (int i = 0; i < n; i++) {
      PointPx a = outline.get(i);
      PointPx b = outline.get((i + 1) % n);
      int dx = (int) (b.xPx() - a.xPx());
      int dy = (int) (b.yPx() - a.yPx());
      int direction = 3 * (dy + 1) + dx + 1;
      sum += dx != 0 && dy != 0 ? 1.406 : 0.980;
      sum -= before >= 0 && before != direction ? 0.091 : 0;
      before = direction;
    }
    // The chain runs through pixel centres; the edge lies half a pixel outside: pi px for a closed
    // curve.
    return Math.max(0, sum) + Math.PI;
  }

  double largestDiameterPx() {
    double most = 0;
    for (PointPx a : hull) {
      for (PointPx b : hull) {
        most = Math.max(most, a.distancePx(b));
      }
    }
    return most + 1;
  }

  /** Area of the hull of the pixels, px2: that of their centres plus half a pixel all round. */
  double hullAreaPx() {
    double area = 0;
    double length = 0;
    int n = hull.size();
    for (int i = 0; i < n; i++) {
      PointPx a = hull.get(i);
      PointPx b = hull.get((i + 1) % n);
      area += a.xPx() * b.yPx() - b.xPx() * a.yPx();
      length += a.distancePx(b);
    }
    return Math.abs(area) / 2 + length / 2 + 1;
  }
}
