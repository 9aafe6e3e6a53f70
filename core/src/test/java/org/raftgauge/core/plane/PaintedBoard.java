// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.marker.QrCells;
import org.raftgauge.core.opencv.MarkerCells;

/** A board in the scene. */
final class PaintedBoard {
  final Layout layout;
  final CameraPose pose;
  final Map<Integer, PointMm> moved = new HashMap<>();
  final List<double[]> discs = new ArrayList<>();
  double light = 0.75;
  double[] tint = {1, 1, 1};
  String tag = "";
  boolean marks = true;
  private boolean[][][] cells = new boolean[0][][];
  private boolean[][] qr = new boolean[0][];

  PaintedBoard(Layout layout, CameraPose pose) {
    this.layout = layout;
    this.pose = pose;
  }

  /** Gives it a tag. */
  PaintedBoard tagged(String text) {
    tag = text;
    qr = QrCells.of(text);
    return this;
  }

  /** Sets the board's linear light, 0..1. */
  PaintedBoard light(double value) {
    light = value;
    return this;
  }

  /** Colours all that is no leaf, by factors of its light. */
  PaintedBoard tint(double red, double green, double blue) {
    tint = new double[] {red, green, blue};
    return this;
  }

  /** Takes markers and tag off. */
  PaintedBoard bare() {
    marks = false;
    return this;
  }

  /** Takes a marker off, or glues it elsewhere. */
  PaintedBoard marker(int id, double xMm, double yMm) {
    moved.put(id, new PointMm(xMm, yMm));
    return this;
  }

  /** Lays a leaf-green disc on the board. */
  PaintedBoard disc(double xMm, double yMm, double radiusMm) {
    discs.add(new double[] {xMm, yMm, radiusMm, 0.06, 0.16, 0.03});
    return this;
  }

  /** Lays a dark disc on the board. */
  PaintedBoard darkDisc(double xMm, double yMm, double radiusMm) {
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
    boolean on = x >= 0 && y >= 0 && x < layout.board().widthMm() && y < layout.board().lengthMm();
    if (on) {
      double v = deck(x, y);
      for (int c = 0; c < 3; c++) {
        out[c] = v * tint[c];
      }
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
