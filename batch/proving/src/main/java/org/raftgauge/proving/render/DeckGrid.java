// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.camera.Camera;

/**
 * Where the rays of picture points meet the deck plane: exact every 16 px, linear between. At the
 * distortions of real lenses the linear part is off by under 0.01 px.
 */
final class DeckGrid {
  private static final int STEP = 16;

  private final int columns;
  private final double[] at;

  DeckGrid(Camera camera) {
    columns = camera.width() / STEP + 3;
    int rows = camera.height() / STEP + 3;
    at = new double[2 * columns * rows];
    for (int i = 0; i < columns * rows; i++) {
      int row = i / columns;
      double px = (i % columns - 1) * (double) STEP;
      double py = (row - 1) * (double) STEP;
      double[] p = camera.planePoint(px, py, 0);
      at[2 * i] = p[0];
      at[2 * i + 1] = p[1];
    }
  }

  /** Returns x ({@code axis} 0) or y (1) of the deck point seen at a picture point, mm. */
  double at(double px, double py, int axis) {
    double gx = px / STEP + 1;
    double gy = py / STEP + 1;
    int ix = (int) gx;
    int iy = (int) gy;
    double fx = gx - ix;
    double fy = gy - iy;
    int i = 2 * (iy * columns + ix) + axis;
    int low = i + 2 * columns;
    return (at[i] * (1 - fx) + at[i + 2] * fx) * (1 - fy)
        + (at[low] * (1 - fx) + at[low + 2] * fx) * fy;
  }
}
