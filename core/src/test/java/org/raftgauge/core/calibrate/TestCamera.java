// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A camera before a flat target, written apart from the program's own: the target's middle lies at
 * {@code (xMm, yMm, distanceMm)} in the camera's frame, turned about the camera's x, y and z axes.
 */
final class TestCamera {
  static final Lens LENS = new Lens(1500, 1490, 655, 470, -0.12, 0.05, 0.0008, -0.0006, 0);

  private final Lens lens;
  private final int width;
  private final int height;
  private final double[] turn;
  private final double[] place;

  TestCamera(double[] turn, double[] place) {
    this.lens = LENS;
    this.width = 1280;
    this.height = 960;
    this.turn = turn.clone();
    this.place = place.clone();
  }

  /** Fourteen views that reach into the corners and tilt to each side; size 1280 x 960. */
  static List<TestCamera> views() {
    double[][] v = {
      {0, 0, 0, 0, 0, 700},
      {0.5, 0, 0, 0, 0, 700},
      {-0.5, 0, 0.1, 0, 0, 700},
      {0, 0.55, 0, 0, 0, 700},
      {0, -0.55, -0.1, 0, 0, 700},
      {0.35, 0.35, 1.5, 0, 0, 760},
      {-0.35, 0.35, 0.8, 0, 0, 760},
      {0.3, -0.4, 0.2, 0, 0, 760},
      {0.1, 0.1, 0, -170, -110, 800},
      {0.1, -0.1, 0, 165, -115, 800},
      {-0.1, 0.1, 0, -170, 110, 800},
      {-0.1, -0.1, 0, 165, 115, 800},
      {0.4, 0.2, 0.4, 60, 30, 900},
      {-0.3, -0.4, -0.5, -60, -30, 900}
    };
    List<TestCamera> views = new ArrayList<>();
    for (double[] p : v) {
      views.add(new TestCamera(new double[] {p[0], p[1], p[2]}, new double[] {p[3], p[4], p[5]}));
    }
    return views;
  }

  private double[] axis(double x, double y) {
    // Rz, then Ry, then Rx, each in the plain textbook form.
    double x1 = x * Math.cos(turn[2]) - y * Math.sin(turn[2]);
    double y1 = x * Math.sin(turn[2]) + y * Math.cos(turn[2]);
    double x2 = x1 * Math.cos(turn[1]);
    double z2 = -x1 * Math.sin(turn[1]);
    double y3 = y1 * Math.cos(turn[0]) - z2 * Math.sin(turn[0]);
    double z3 = y1 * Math.sin(turn[0]) + z2 * Math.cos(turn[0]);
    return new double[] {x2, y3, z3};
  }

  PointPx project(double xMm, double yMm) {
    double[] c = axis(xMm, yMm);
    return lensed((c[0] + place[0]) / (c[2] + place[2]), (c[1] + place[1]) / (c[2] + place[2]));
  }

  private PointPx lensed(double x, double y) {
    double r2 = x * x + y * y;
    double radial = 1 + lens.k1() * r2 + lens.k2() * r2 * r2 + lens.k3() * r2 * r2 * r2;
    double xd = x * radial + 2 * lens.p1() * x * y + lens.p2() * (r2 + 2 * x * x);
    double yd = y * radial + lens.p1() * (r2 + 2 * y * y) + 2 * lens.p2() * x * y;
    return new PointPx(lens.fxPx() * xd + lens.cxPx(), lens.fyPx() * yd + lens.cyPx());
  }

  /** Returns where a pixel's ray meets the target, mm. */
  double[] onTarget(double px, double py) {
    double xd = (px - lens.cxPx()) / lens.fxPx();
    double yd = (py - lens.cyPx()) / lens.fyPx();
    double x = xd;
    double y = yd;
    for (int k = 0; k < 8; k++) {
      PointPx at = lensed(x, y);
      x += xd - (at.xPx() - lens.cxPx()) / lens.fxPx();
      y += yd - (at.yPx() - lens.cyPx()) / lens.fyPx();
    }
    double[] u = axis(1, 0);
    double[] v = axis(0, 1);
    double[] n = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
    double s = (n[0] * place[0] + n[1] * place[1] + n[2] * place[2]) / (n[0] * x + n[1] * y + n[2]);
    double[] d = {s * x - place[0], s * y - place[1], s - place[2]};
    return new double[] {
      d[0] * u[0] + d[1] * u[1] + d[2] * u[2], d[0] * v[0] + d[1] * v[1] + d[2] * v[2]
    };
  }

  /** Returns a chessboard's inner corners as seen, with normal errors, numbered row by row. */
  TargetSighting corners(String photo, CalibrationTarget board, double noisePx, Random random) {
    List<TargetPoint> points = new ArrayList<>();
    for (int r = 1; r < board.rows(); r++) {
      for (int c = 1; c < board.columns(); c++) {
        double x = (c - board.columns() / 2.0) * board.sizeMm();
        double y = (r - board.rows() / 2.0) * board.sizeMm();
        PointPx p = project(x, y);
        PointPx seen =
            new PointPx(
                p.xPx() + noisePx * random.nextGaussian(),
                p.yPx() + noisePx * random.nextGaussian());
        points.add(new TargetPoint(points.size(), x, y, seen));
      }
    }
    return new TargetSighting(photo, width, height, points, OptionalDouble.of(0.9));
  }

  /** A picture of a target: black 0.05, white 0.8 of light, a grey surrounding. */
  RgbImage photo(Pattern pattern, double blurPx) {
    int parts = 3;
    float[] light = new float[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        double sum = 0;
        for (int i = 0; i < parts * parts; i++) {
          double dx = (i % parts + 0.5) / parts - 0.5;
          double dy = (Math.floorDiv(i, parts) + 0.5) / parts - 0.5;
          double[] at = onTarget(x + dx, y + dy);
          sum += pattern.light(at[0], at[1]) / (parts * parts);
        }
        light[y * width + x] = (float) sum;
      }
    }
    return coded(blurPx > 0 ? blurred(light, blurPx) : light);
  }

  private float[] blurred(float[] light, double sigma) {
    int reach = (int) Math.ceil(3 * sigma);
    float[] along = new float[light.length];
    float[] both = new float[light.length];
    for (int pass = 0; pass < 2; pass++) {
      float[] from = pass == 0 ? light : along;
      float[] to = pass == 0 ? along : both;
      for (int i = 0; i < light.length; i++) {
        int x = i % width;
        int y = Math.floorDiv(i, width);
        double sum = 0;
        double weight = 0;
        for (int d = -reach; d <= reach; d++) {
          int xx = pass == 0 ? Math.max(0, Math.min(width - 1, x + d)) : x;
          int yy = pass == 1 ? Math.max(0, Math.min(height - 1, y + d)) : y;
          double w = Math.exp(-0.5 * d * d / (sigma * sigma));
          sum += w * from[yy * width + xx];
          weight += w;
        }
        to[i] = (float) (sum / weight);
      }
    }
    return both;
  }

  private RgbImage coded(float[] light) {
    byte[] rgb = new byte[3 * light.length];
    for (int i = 0; i < light.length; i++) {
      double v = light[i];
      double coded = v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
      java.util.Arrays.fill(rgb, 3 * i, 3 * i + 3, (byte) Math.round(255 * coded));
    }
    return RgbImage.of(width, height, rgb);
  }

  /** What is printed: light 0..1 at a place, mm from the target's middle. */
  interface Pattern {
    double light(double xMm, double yMm);
  }

  /** Paints a target by its own definition. */
  static Pattern paint(CalibrationTarget t) {
    double halfX = t.columns() * t.pitchMm() / 2;
    double halfY = t.rows() * t.pitchMm() / 2;
    double rowPitch = t.pitchMm() * Math.sqrt(3) / 2;
    return (x, y) -> {
      if (Math.abs(x) > halfX + t.sizeMm() || Math.abs(y) > halfY + t.sizeMm()) {
        return 0.3;
      }
      boolean black =
          switch (t.shape()) {
            case CHESSBOARD ->
                Math.abs(x) < halfX
                    && Math.abs(y) < halfY
                    && (Math.floor((x + halfX) / t.sizeMm()) + Math.floor((y + halfY) / t.sizeMm()))
                            % 2
                        == 0;
            case SQUARES -> inside(x, t.columns(), t) && inside(y, t.rows(), t);
            case CIRCLES ->
                Math.hypot(offset(x, t.columns(), t.pitchMm()), offset(y, t.rows(), t.pitchMm()))
                    < t.sizeMm() / 2;
            case STAGGERED_CIRCLES -> staggered(x, y, t, rowPitch);
          };
      return black ? 0.05 : 0.8;
    };
  }

  private static boolean inside(double v, int n, CalibrationTarget t) {
    return Math.abs(offset(v, n, t.pitchMm())) < t.sizeMm() / 2;
  }

  /** Distance from the nearest of n places with a pitch about 0. */
  private static double offset(double v, int n, double pitch) {
    double i = Math.rint(v / pitch + (n - 1) / 2.0);
    double clamped = Math.max(0, Math.min(n - 1.0, i));
    return v - (clamped - (n - 1) / 2.0) * pitch;
  }

  /**
   * Rows 0, 2, .. hold columns 0, 2, ..; rows 1, 3, .. hold columns 1, 3, ...; half pitch apart.
   */
  private static boolean staggered(double x, double y, CalibrationTarget t, double rowPitch) {
    for (int r = 0; r < t.rows(); r++) {
      double cy = (r - (t.rows() - 1) / 2.0) * rowPitch;
      for (int c = r % 2; c < t.columns(); c += 2) {
        double cx = (c - (t.columns() - 1) / 2.0) * t.pitchMm() / 2;
        if (Math.hypot(x - cx, y - cy) < t.sizeMm() / 2) {
          return true;
        }
      }
    }
    return false;
  }
}
