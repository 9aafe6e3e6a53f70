// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Arrays;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A coarse map of the deck under a camera that looks straight down: where light changes across
 * columns and across rows, with sums along them, so that the share of a line that shows an edge is
 * told at once. Origin under the camera, axes along the boards.
 */
final class DeckSketch {
  /** Side of a cell, mm: the place of an edge is sought to about that. */
  static final double CELL_MM = 5;

  private static final int PARTS = 3;

  /** A step is an edge from this share of the picture's own contrast on. */
  private static final double EDGE_SHARE = 0.10;

  private final int width;
  private final int height;
  private final double leftMm;
  private final double topMm;
  private final int[] acrossX;
  private final int[] acrossY;

  private DeckSketch(int width, int height, PointMm corner, float[] root) {
    this.width = width;
    this.height = height;
    this.leftMm = corner.xMm();
    this.topMm = corner.yMm();
    double edge = EDGE_SHARE * contrast(root);
    this.acrossX = new int[(width + 1) * (height + 1)];
    this.acrossY = new int[(width + 1) * (height + 1)];
    sum(root, edge);
  }

  /** Draws the map of what a photo shows. */
  static DeckSketch of(RgbImage photo, CameraPose above) {
    LinearLight light = LinearLight.of(photo);
    double left = Double.POSITIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < 4; i++) {
      PointMm p =
          above.toDeck(
              new PointPx((i & 1) * (photo.width() - 1.0), (i >> 1) * (photo.height() - 1.0)));
      left = Math.min(left, p.xMm());
      right = Math.max(right, p.xMm());
      top = Math.min(top, p.yMm());
      bottom = Math.max(bottom, p.yMm());
    }
    int w = (int) ((right - left) / CELL_MM);
    int h = (int) ((bottom - top) / CELL_MM);
    float[] root = new float[w * h];
    for (int i = 0; i < root.length; i++) {
      double sum = 0;
      for (int k = 0; k < PARTS * PARTS; k++) {
        double x = left + CELL_MM * (i % w + (k % PARTS + 0.5) / PARTS);
        double y = top + CELL_MM * (Math.floorDiv(i, w) + (Math.floorDiv(k, PARTS) + 0.5) / PARTS);
        PointPx p = above.toPhoto(x, y, 0);
        sum += light.at(p.xPx(), p.yPx());
      }
      root[i] = (float) Math.sqrt(sum / (PARTS * PARTS));
    }
    return new DeckSketch(w, h, new PointMm(left, top), root);
  }

  private static double contrast(float[] root) {
    float[] sorted = root.clone();
    Arrays.sort(sorted);
    return sorted[(int) (0.98 * (sorted.length - 1))] - sorted[(int) (0.02 * (sorted.length - 1))];
  }

  /** Edges widened by a cell to each side, summed down columns (across x) and along rows. */
  private void sum(float[] root, double edge) {
    boolean[] x = new boolean[width * height];
    boolean[] y = new boolean[width * height];
    for (int r = 1; r < height - 1; r++) {
      for (int c = 1; c < width - 1; c++) {
        int i = r * width + c;
        x[i] = Math.abs(root[i + 1] - root[i - 1]) > edge;
        y[i] = Math.abs(root[i + width] - root[i - width]) > edge;
      }
    }
    for (int r = 0; r < height; r++) {
      for (int c = 0; c < width; c++) {
        int i = (r + 1) * (width + 1) + c + 1;
        acrossX[i] = acrossX[i - width - 1] + (x[r * width + c] ? 1 : 0);
        acrossY[i] = acrossY[i - 1] + (y[r * width + c] ? 1 : 0);
      }
    }
  }

  int columns() {
    return width;
  }

  int rows() {
    return height;
  }

  /** Returns the deck place of a cell's corner. */
  PointMm place(int column, int row) {
    return new PointMm(leftMm + CELL_MM * column, topMm + CELL_MM * row);
  }

  /** Returns the share of a line down a column of cells that is an edge, 0..1. */
  double downShare(int column, int fromRow, int toRow) {
    int c = Math.max(0, Math.min(width - 1, column)) + 1;
    int sum = acrossX[toRow * (width + 1) + c] - acrossX[fromRow * (width + 1) + c];
    return (double) sum / (toRow - fromRow);
  }

  /** Returns the share of a line along a row of cells that is an edge, 0..1. */
  double alongShare(int row, int fromColumn, int toColumn) {
    int r = Math.max(0, Math.min(height - 1, row)) + 1;
    int sum = acrossY[r * (width + 1) + toColumn] - acrossY[r * (width + 1) + fromColumn];
    return (double) sum / (toColumn - fromColumn);
  }
}
