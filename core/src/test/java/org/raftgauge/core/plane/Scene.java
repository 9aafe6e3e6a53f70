// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.marker.QrCells;
import org.raftgauge.core.opencv.MarkerCells;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Draws boards with markers, tags, holes and flat leaves as a camera sees them: exact by
 * projection, each pixel the mean of 5 x 5 places in linear light.
 */
final class Scene {
  private static final int FINE = 5;
  private static final int MESH = 4;

  private final int width;
  private final int height;
  private final Random random;
  private final List<Painted> boards = new ArrayList<>();
  private double water = 0.03;
  private double noise = 2;

  /** A board in the scene. */
  static final class Painted {
    final Layout layout;
    final CameraPose pose;
    final Map<Integer, PointMm> moved = new HashMap<>();
    final List<double[]> discs = new ArrayList<>();
    double light = 0.75;
    String tag = "";
    boolean marks = true;
    private boolean[][][] cells = new boolean[0][][];
    private boolean[][] qr = new boolean[0][];

    Painted(Layout layout, CameraPose pose) {
      this.layout = layout;
      this.pose = pose;
    }

    /** Gives it a tag. */
    Painted tagged(String text) {
      tag = text;
      qr = QrCells.of(text);
      return this;
    }

    /** Sets the board's linear light, 0..1. */
    Painted light(double value) {
      light = value;
      return this;
    }

    /** Takes markers and tag off. */
    Painted bare() {
      marks = false;
      return this;
    }

    /** Takes a marker off, or glues it elsewhere. */
    Painted marker(int id, double xMm, double yMm) {
      moved.put(id, new PointMm(xMm, yMm));
      return this;
    }

    /** Lays a leaf-green disc on the board. */
    Painted disc(double xMm, double yMm, double radiusMm) {
      discs.add(new double[] {xMm, yMm, radiusMm, 0.06, 0.16, 0.03});
      return this;
    }

    /** Lays a dark disc on the board. */
    Painted darkDisc(double xMm, double yMm, double radiusMm) {
      discs.add(new double[] {xMm, yMm, radiusMm, 0.01, 0.01, 0.01});
      return this;
    }

    boolean colour(double x, double y, double[] out) {
      for (double[] d : discs) {
        if ((x - d[0]) * (x - d[0]) + (y - d[1]) * (y - d[1]) < d[2] * d[2]) {
          System.arraycopy(d, 3, out, 0, 3);
          return true;
        }
      }
      boolean on =
          x >= 0 && y >= 0 && x < layout.board().widthMm() && y < layout.board().lengthMm();
      if (on) {
        double v = deck(x, y);
        out[0] = v;
        out[1] = v;
        out[2] = v;
      }
      return on;
    }

    private double deck(double x, double y) {
      if (marks) {
        double mark = mark(x, y);
        if (mark >= 0) {
          return mark;
        }
      }
      SiteGrid grid = layout.grid();
      int row = (int) Math.round((y - grid.firstYMm()) / grid.pitchYMm());
      double shift = Math.floorMod(row, 2) == 1 ? grid.staggerXMm() : 0;
      int column = (int) Math.round((x - grid.firstXMm() - shift) / grid.pitchXMm());
      if (row < 0 || column < 0 || !grid.has(new SiteId(row, column))) {
        return light;
      }
      double dx = x - grid.firstXMm() - shift - column * grid.pitchXMm();
      double dy = y - grid.firstYMm() - row * grid.pitchYMm();
      return dx * dx + dy * dy < 400 ? 0.02 : light;
    }

    private double mark(double x, double y) {
      if (layout.tag().isPresent() && qr.length > 0) {
        double side = layout.tag().get().sideMm();
        double v = code(qr, x - layout.tag().get().xMm(), y - layout.tag().get().yMm(), side, 4);
        if (v >= 0) {
          return v;
        }
      }
      if (layout.markers().isPresent()) {
        if (cells.length == 0) {
          cells = new boolean[][][] {cells(0), cells(1), cells(2), cells(3)};
        }
        for (int id = 0; id < 4; id++) {
          PointMm c = moved.getOrDefault(id, layout.markers().get().centresMm().get(id));
          double v = code(cells[id], x - c.xMm(), y - c.yMm(), layout.markers().get().sideMm(), 1);
          if (v >= 0) {
            return v;
          }
        }
      }
      return -1;
    }

    private static boolean[][] cells(int id) {
      return MarkerCells.of(id);
    }

    private static double code(boolean[][] white, double x, double y, double sideMm, double quiet) {
      if (Math.max(Math.abs(x), Math.abs(y)) > sideMm) {
        return -1;
      }
      int n = white.length;
      double cell = sideMm / n;
      double u = (x + sideMm / 2) / cell;
      double v = (y + sideMm / 2) / cell;
      if (u < -quiet || v < -quiet || u >= n + quiet || v >= n + quiet) {
        return -1;
      }
      boolean inside = u >= 0 && v >= 0 && u < n && v < n;
      return inside && !white[(int) v][(int) u] ? 0.02 : 0.8;
    }
  }

  private Scene(int width, int height, long seed) {
    this.width = width;
    this.height = height;
    this.random = new Random(seed);
  }

  static Scene of(int width, int height, long seed) {
    return new Scene(width, height, seed);
  }

  Scene water(double light) {
    water = light;
    return this;
  }

  Scene noise(double codes) {
    noise = codes;
    return this;
  }

  Painted board(Layout layout, CameraPose pose) {
    Painted board = new Painted(layout, pose);
    boards.add(board);
    return board;
  }

  RgbImage draw() {
    float[] light = new float[3 * width * height];
    for (int y0 = 0; y0 < height; y0 += MESH) {
      for (int x0 = 0; x0 < width; x0 += MESH) {
        tile(x0, y0, light);
      }
    }
    byte[] rgb = new byte[light.length];
    for (int i = 0; i < rgb.length; i++) {
      double code = 255 * encoded(light[i]) + noise * random.nextGaussian();
      rgb[i] = (byte) Math.max(0, Math.min(255, Math.round(code)));
    }
    return RgbImage.of(width, height, rgb);
  }

  private void tile(int x0, int y0, float[] light) {
    PointMm[][] corners = new PointMm[boards.size()][];
    for (int b = 0; b < boards.size(); b++) {
      CameraPose pose = boards.get(b).pose;
      corners[b] =
          new PointMm[] {
            pose.toDeck(new PointPx(x0 - 0.5, y0 - 0.5)),
            pose.toDeck(new PointPx(x0 + MESH - 0.5, y0 - 0.5)),
            pose.toDeck(new PointPx(x0 - 0.5, y0 + MESH - 0.5)),
            pose.toDeck(new PointPx(x0 + MESH - 0.5, y0 + MESH - 0.5))
          };
    }
    double[] colour = new double[3];
    for (int j = 0; j < MESH * FINE; j++) {
      for (int i = 0; i < MESH * FINE; i++) {
        int x = x0 + i / FINE;
        int y = y0 + j / FINE;
        if (x < width && y < height) {
          double fx = (i + 0.5) / (MESH * FINE);
          double fy = (j + 0.5) / (MESH * FINE);
          look(corners, fx, fy, colour);
          for (int c = 0; c < 3; c++) {
            light[3 * (y * width + x) + c] += (float) (colour[c] / (FINE * FINE));
          }
        }
      }
    }
  }

  private void look(PointMm[][] corners, double fx, double fy, double[] colour) {
    for (int b = 0; b < boards.size(); b++) {
      PointMm[] c = corners[b];
      double x =
          (1 - fy) * ((1 - fx) * c[0].xMm() + fx * c[1].xMm())
              + fy * ((1 - fx) * c[2].xMm() + fx * c[3].xMm());
      double y =
          (1 - fy) * ((1 - fx) * c[0].yMm() + fx * c[1].yMm())
              + fy * ((1 - fx) * c[2].yMm() + fx * c[3].yMm());
      if (boards.get(b).colour(x, y, colour)) {
        return;
      }
    }
    java.util.Arrays.fill(colour, water);
  }

  private static double encoded(double light) {
    double c = Math.max(0, Math.min(1, light));
    return c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
  }
}
