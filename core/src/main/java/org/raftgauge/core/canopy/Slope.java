// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** How steep a plane is at each pixel, by Sobel's weights; the picture's rim repeats. */
final class Slope {
  private final int width;
  private final int height;
  private final float[] plane;

  Slope(int width, int height, float[] plane) {
    this.width = width;
    this.height = height;
    this.plane = plane;
  }

  /** Returns the slope at each pixel, the plane's unit a pixel. */
  float[] all() {
    float[] all = new float[plane.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        all[y * width + x] = (float) at(x, y);
      }
    }
    return all;
  }

  /** Returns the slope at a pixel, the plane's unit a pixel. */
  double at(int x, int y) {
    int[] xs = {Math.max(0, x - 1), x, Math.min(width - 1, x + 1)};
    int[] ys = {Math.max(0, y - 1), y, Math.min(height - 1, y + 1)};
    double dx = 0;
    double dy = 0;
    for (int k = 0; k < 3; k++) {
      int weight = k == 1 ? 2 : 1;
      int row = ys[k] * width;
      dx += weight * (plane[row + xs[2]] - plane[row + xs[0]]);
      dy += weight * (plane[ys[2] * width + xs[k]] - plane[ys[0] * width + xs[k]]);
    }
    return Math.hypot(dx, dy) / 8;
  }
}
