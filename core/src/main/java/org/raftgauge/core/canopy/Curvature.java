// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * How a plane bends at each pixel, across and along: the two eigenvalues of its second differences
 * over a step. A ridge has one far below 0, a valley one far above. The picture's rim repeats.
 */
final class Curvature {
  private final float[] least;
  private final float[] most;

  Curvature(float[] plane, int width, int step) {
    this.least = new float[plane.length];
    this.most = new float[plane.length];
    int height = plane.length / width;
    for (int y = 0; y < height; y++) {
      int row = y * width;
      int up = Math.max(0, y - step) * width;
      int down = Math.min(height - 1, y + step) * width;
      for (int x = 0; x < width; x++) {
        int left = Math.max(0, x - step);
        int right = Math.min(width - 1, x + step);
        float twice = 2 * plane[row + x];
        float across = plane[row + left] + plane[row + right] - twice;
        float along = plane[up + x] + plane[down + x] - twice;
        float mixed =
            (plane[down + right] + plane[up + left] - plane[up + right] - plane[down + left]) / 4;
        float middle = (across + along) / 2;
        float half = (across - along) / 2;
        float apart = (float) Math.sqrt(half * half + mixed * mixed);
        least[row + x] = middle - apart;
        most[row + x] = middle + apart;
      }
    }
  }

  /** Returns the lesser eigenvalue at each pixel; not copied. */
  float[] least() {
    return least;
  }

  /** Returns the greater eigenvalue at each pixel; not copied. */
  float[] most() {
    return most;
  }
}
