// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * A height map: the highest surface over every cell of a grid on the deck plane, seen straight down
 * from infinitely far away, or along a slanted ray.
 */
public final class TopView {
  /** The height of a cell that nothing covers. */
  public static final float NOTHING = -1e9f;

  private final double x0;
  private final double y0;
  private final double step;
  private final int width;
  private final int height;
  private final float[] top;
  private double shearX;
  private double shearY;

  /**
   * Makes an empty map.
   *
   * @param box what it covers, mm
   * @param stepMm side of a cell, mm, above 0
   */
  public TopView(Box box, double stepMm) {
    this.x0 = box.xMinMm();
    this.y0 = box.yMinMm();
    this.step = stepMm;
    this.width = Math.max(1, (int) Math.ceil((box.xMaxMm() - x0) / stepMm));
    this.height = Math.max(1, (int) Math.ceil((box.yMaxMm() - y0) / stepMm));
    this.top = new float[width * height];
    Arrays.fill(top, NOTHING);
  }

  /**
   * Looks along a slanted ray instead of straight down: a point at height z lands at {@code x - z *
   * dx, y - z * dy}.
   *
   * @param dx mm along x per mm of height
   * @param dy mm along y per mm of height
   * @return this map
   */
  public TopView slanted(double dx, double dy) {
    shearX = dx;
    shearY = dy;
    return this;
  }

  /**
   * Draws the triangles whose patch is wanted.
   *
   * @param mesh the mesh
   * @param wanted says of a patch index whether it is drawn
   */
  public void draw(Mesh mesh, IntPredicate wanted) {
    for (int t = 0; t < mesh.triangles(); t++) {
      if (wanted.test(mesh.patchOf(t))) {
        drawTriangle(mesh, mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2));
      }
    }
  }

  private double column(Mesh mesh, int i) {
    return (mesh.x(i) - shearX * mesh.z(i) - x0) / step - 0.5;
  }

  private double row(Mesh mesh, int i) {
    return (mesh.y(i) - shearY * mesh.z(i) - y0) / step - 0.5;
  }

  private void drawTriangle(Mesh mesh, int a, int b, int c) {
    double ax = column(mesh, a);
    double ay = row(mesh, a);
    double bx = column(mesh, b);
    double by = row(mesh, b);
    double cx = column(mesh, c);
    double cy = row(mesh, c);
    double area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (Math.abs(area) < 1e-9) {
      return;
    }
    int yLow = (int) Math.max(0, Math.ceil(Math.min(ay, Math.min(by, cy))));
    int yHigh = (int) Math.min(height - 1, Math.floor(Math.max(ay, Math.max(by, cy))));
    int xLow = (int) Math.max(0, Math.ceil(Math.min(ax, Math.min(bx, cx))));
    int xHigh = (int) Math.min(width - 1, Math.floor(Math.max(ax, Math.max(bx, cx))));
    for (int y = yLow; y <= yHigh; y++) {
      for (int x = xLow; x <= xHigh; x++) {
        double wa = ((bx - x) * (cy - y) - (by - y) * (cx - x)) / area;
        double wb = ((cx - x) * (ay - y) - (cy - y) * (ax - x)) / area;
        double wc = 1 - wa - wb;
        if (wa >= 0 && wb >= 0 && wc >= 0) {
          float z = (float) (wa * mesh.z(a) + wb * mesh.z(b) + wc * mesh.z(c));
          int at = y * width + x;
          top[at] = Math.max(top[at], z);
        }
      }
    }
  }

  /** Returns the number of columns. */
  public int width() {
    return width;
  }

  /** Returns the number of rows. */
  public int height() {
    return height;
  }

  /** Returns the area of one cell, cm2. */
  public double cellCm2() {
    return step * step / 100;
  }

  /**
   * Returns a cell's height.
   *
   * @param column column
   * @param row row
   * @return mm over the deck, {@link #NOTHING} if nothing covers it or it lies outside
   */
  public float at(int column, int row) {
    return column < 0 || row < 0 || column >= width || row >= height
        ? NOTHING
        : top[row * width + column];
  }

  /**
   * Returns the height at a place.
   *
   * @param xMm x on the deck plane (of the slanted ray's foot), mm
   * @param yMm y on the deck plane, mm
   * @return mm over the deck, {@link #NOTHING} if nothing covers it or it lies outside
   */
  public float atMm(double xMm, double yMm) {
    return at((int) Math.floor((xMm - x0) / step), (int) Math.floor((yMm - y0) / step));
  }

  /** Returns the area that anything covers, cm2. */
  public double coveredCm2() {
    int cells = 0;
    for (float z : top) {
      if (z > NOTHING) {
        cells++;
      }
    }
    return cells * cellCm2();
  }
}
