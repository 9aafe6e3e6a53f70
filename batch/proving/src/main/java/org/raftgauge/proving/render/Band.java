// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import java.util.Arrays;

/** A z-buffer over some rows of the photo, each pixel split into {@code SPLIT x SPLIT} samples. */
final class Band {
  /** Samples along a pixel's side. */
  static final int SPLIT = 3;

  /** The triangle of a sample that shows the deck. */
  static final int DECK = -1;

  private final int width;
  private final int[] triangle;
  private final float[] depth;
  private int firstRow;
  private int rows;

  Band(int widthPx, int rowsPx) {
    width = widthPx * SPLIT;
    triangle = new int[width * rowsPx * SPLIT];
    depth = new float[width * rowsPx * SPLIT];
  }

  /** Empties the buffer and moves it to some rows of the photo. */
  void moveTo(int firstRowPx, int rowsPx) {
    firstRow = firstRowPx * SPLIT;
    rows = rowsPx * SPLIT;
    Arrays.fill(triangle, DECK);
    Arrays.fill(depth, Float.MAX_VALUE);
  }

  /** Returns the triangle that a sample shows. */
  int triangle(int column, int row) {
    return triangle[(row - firstRow) * width + column];
  }

  /** Draws a projected triangle: x px, y px and depth for each corner. */
  void draw(int t, Projected at, int[] corner) {
    double ax = at.sampleX(corner[0]);
    double ay = at.sampleY(corner[0]);
    double bx = at.sampleX(corner[1]);
    double by = at.sampleY(corner[1]);
    double cx = at.sampleX(corner[2]);
    double cy = at.sampleY(corner[2]);
    double area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (Math.abs(area) < 1e-9) {
      return;
    }
    int yLow = (int) Math.max(firstRow, Math.ceil(Math.min(ay, Math.min(by, cy))));
    int yHigh = (int) Math.min(firstRow + rows - 1, Math.floor(Math.max(ay, Math.max(by, cy))));
    int xLow = (int) Math.max(0, Math.ceil(Math.min(ax, Math.min(bx, cx))));
    int xHigh = (int) Math.min(width - 1, Math.floor(Math.max(ax, Math.max(bx, cx))));
    float da = at.depth(corner[0]);
    float db = at.depth(corner[1]);
    float dc = at.depth(corner[2]);
    for (int y = yLow; y <= yHigh; y++) {
      for (int x = xLow; x <= xHigh; x++) {
        double wa = ((bx - x) * (cy - y) - (by - y) * (cx - x)) / area;
        double wb = ((cx - x) * (ay - y) - (cy - y) * (ax - x)) / area;
        double wc = 1 - wa - wb;
        if (wa >= 0 && wb >= 0 && wc >= 0) {
          int i = (y - firstRow) * width + x;
          float d = (float) (wa * da + wb * db + wc * dc);
          if (d < depth[i]) {
            depth[i] = d;
            triangle[i] = t;
          }
        }
      }
    }
  }
}
