// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.Optional;
import org.raftgauge.core.pixels.PointPx;

/**
 * A straight edge fitted to a photo's light: places {@code point + t * direction}.
 *
 * @param xPx a point on it
 * @param yPx a point on it
 * @param dx its direction, unit length
 * @param dy its direction, unit length
 * @param rmsPx root mean square distance of the edge places from it, px
 * @param supportFraction share of the cuts across the edge that showed it, 0..1
 */
record EdgeLine(
    double xPx, double yPx, double dx, double dy, double rmsPx, double supportFraction) {
  private static final double STEP_PX = 0.5;
  private static final int ROUNDS = 5;

  /** Part of an edge to fit on: from {@code a} to {@code b}, dark on its right hand side. */
  record Span(PointPx a, PointPx b) {
    double lengthPx() {
      return a.distancePx(b);
    }
  }

  /**
   * Fits a line to one edge that is dark on the right when going from {@code a} to {@code b} (x
   * right, y down: the inside of a dark square walked clockwise).
   *
   * <p>Cuts across the edge are read in linear light; the place of the edge on a cut is the
   * centroid of its gradient in a window about the present line, and the line is fitted again until
   * the window is centred, which takes the pull of the window's ends away.
   *
   * @param light the photo's light
   * @param reachPx half the window, px; less than the distance to the next edge
   * @param spans parts of one straight edge
   * @return the line, or nothing where under half of the cuts show an edge
   */
  static Optional<EdgeLine> fit(LinearLight light, double reachPx, Span... spans) {
    PointPx from = spans[0].a();
    PointPx to = spans[spans.length - 1].b();
    double length = from.distancePx(to);
    if (!(length > 2)) {
      return Optional.empty();
    }
    double dx = (to.xPx() - from.xPx()) / length;
    double dy = (to.yPx() - from.yPx()) / length;
    EdgeLine line = new EdgeLine(from.xPx(), from.yPx(), dx, dy, 0, 1);
    for (int round = 0; round < ROUNDS; round++) {
      // The first rounds look wider: the detector's corners may be a pixel or two off.
      double reach = round < 2 ? 1.3 * reachPx : reachPx;
      Optional<EdgeLine> next = line.step(light, reach, spans);
      if (next.isEmpty()) {
        return next;
      }
      line = next.get();
    }
    return Optional.of(line);
  }

  private Optional<EdgeLine> step(LinearLight light, double reachPx, Span... spans) {
    Points points = new Points();
    int cuts = 0;
    for (Span span : spans) {
      int n = (int) Math.max(6, Math.min(60, span.lengthPx()));
      for (int i = 0; i < n; i++) {
        double share = (i + 0.5) / n;
        double px = span.a().xPx() + share * (span.b().xPx() - span.a().xPx());
        double py = span.a().yPx() + share * (span.b().yPx() - span.a().yPx());
        double t = (px - xPx) * dx + (py - yPx) * dy;
        points.add(t, cut(light, xPx + t * dx, yPx + t * dy, reachPx));
        cuts++;
      }
    }
    return points.line(this, cuts);
  }

  /** Returns offset (outward) and mass of the gradient on the cut through a place of the line. */
  private double[] cut(LinearLight light, double x, double y, double reachPx) {
    double outX = dy;
    double outY = -dx;
    int n = (int) Math.round(2 * reachPx / STEP_PX);
    double mass = 0;
    double moment = 0;
    double before = light.at(x - reachPx * outX, y - reachPx * outY);
    for (int i = 0; i < n; i++) {
      double s = -reachPx + (i + 1) * 2 * reachPx / n;
      double after = light.at(x + s * outX, y + s * outY);
      double rise = Math.max(0, after - before);
      mass += rise;
      moment += rise * (s - reachPx / n);
      before = after;
    }
    return new double[] {mass > 0 ? moment / mass : 0, mass};
  }

  /**
   * Returns where two lines meet.
   *
   * @param other another line, not parallel
   * @return the meeting place, or nothing where they are within a degree of parallel
   */
  Optional<PointPx> meets(EdgeLine other) {
    double cross = dx * other.dy - dy * other.dx;
    if (Math.abs(cross) < 0.02) {
      return Optional.empty();
    }
    double t = ((other.xPx - xPx) * other.dy - (other.yPx - yPx) * other.dx) / cross;
    return Optional.of(new PointPx(xPx + t * dx, yPx + t * dy));
  }

  /** Edge places along a line: distance along it, offset from it, gradient mass. */
  private static final class Points {
    private final double[] t = new double[240];
    private final double[] offset = new double[240];
    private final double[] mass = new double[240];
    private int n;

    void add(double along, double[] cut) {
      if (n < t.length) {
        t[n] = along;
        offset[n] = cut[0];
        mass[n] = cut[1];
        n++;
      }
    }

    Optional<EdgeLine> line(EdgeLine old, int cuts) {
      double[] sorted = java.util.Arrays.copyOf(mass, n);
      java.util.Arrays.sort(sorted);
      double strong = 0.35 * sorted[n * 3 / 4];
      int shown = 0;
      for (int i = 0; i < n; i++) {
        boolean edge = mass[i] > strong && mass[i] > 0.004;
        mass[i] = edge ? 1 : 0;
        shown += edge ? 1 : 0;
      }
      if (shown < Math.max(3, cuts / 2)) {
        return Optional.empty();
      }
      double a = 0;
      double b = 0;
      double scale = 1;
      for (int round = 0; round < 6; round++) {
        double[] ab = weighted(a, b, round == 0 ? 1e9 : 3 * scale);
        a = ab[0];
        b = ab[1];
        scale = Math.max(0.03, ab[2]);
      }
      double norm = Math.hypot(1, b);
      double ndx = (old.dx + b * old.dy) / norm;
      double ndy = (old.dy - b * old.dx) / norm;
      return Optional.of(
          new EdgeLine(
              old.xPx + a * old.dy, old.yPx - a * old.dx, ndx, ndy, scale, (double) shown / cuts));
    }

    /** One round of Tukey's biweight for offset = a + b t; returns a, b, rms. */
    private double[] weighted(double a, double b, double cutoff) {
      double sw = 0;
      double st = 0;
      double so = 0;
      double stt = 0;
      double sto = 0;
      for (int i = 0; i < n; i++) {
        double w = weight(i, a, b, cutoff);
        sw += w;
        st += w * t[i];
        so += w * offset[i];
        stt += w * t[i] * t[i];
        sto += w * t[i] * offset[i];
      }
      double det = sw * stt - st * st;
      double nb = det > 1e-9 ? (sw * sto - st * so) / det : 0;
      double na = sw > 0 ? (so - nb * st) / sw : 0;
      double rss = 0;
      for (int i = 0; i < n; i++) {
        double r = offset[i] - na - nb * t[i];
        rss += weight(i, a, b, cutoff) * r * r;
      }
      return new double[] {na, nb, Math.sqrt(rss / Math.max(1e-9, sw))};
    }

    private double weight(int i, double a, double b, double cutoff) {
      double r = (offset[i] - a - b * t[i]) / cutoff;
      return mass[i] * (Math.abs(r) < 1 ? (1 - r * r) * (1 - r * r) : 0);
    }
  }
}
