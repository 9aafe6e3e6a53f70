// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Calms a plane of light with the binomial kernel 1 2 1 both ways (a Gaussian of 0.7 px); edges
 * repeat.
 */
final class Binomial {

  private Binomial() {}

  static float[] blur(float[] plane, int width, int height) {
    float[] rows = new float[plane.length];
    for (int y = 0; y < height; y++) {
      int row = y * width;
      for (int x = 0; x < width; x++) {
        float left = plane[row + Math.max(0, x - 1)];
        float right = plane[row + Math.min(width - 1, x + 1)];
        rows[row + x] = 0.25f * (left + right) + 0.5f * plane[row + x];
      }
    }
    float[] both = new float[plane.length];
    for (int y = 0; y < height; y++) {
      int up = Math.max(0, y - 1) * width;
      int down = Math.min(height - 1, y + 1) * width;
      for (int x = 0; x < width; x++) {
        both[y * width + x] = 0.25f * (rows[up + x] + rows[down + x]) + 0.5f * rows[y * width + x];
      }
    }
    return both;
  }
}
