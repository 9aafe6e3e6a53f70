// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Calms a plane of light with the binomial kernel 1 2 1 both ways (a Gaussian of 0.7 px); edges
 * repeat.
 */
final class Binomial {

  private Binomial() {}

  /** Does something to a calmed row. */
  interface EachRow {

    /** Changes the values of row y in place. */
    void change(int y, float[] row);
  }

  static float[] blur(float[] plane, int width, int height) {
    return blur(plane, width, height, (y, row) -> {});
  }

  /** Calms a plane and changes its rows, each while it is at hand. */
  static float[] blur(float[] plane, int width, int height, EachRow then) {
    float[] both = new float[plane.length];
    float[] up = new float[width];
    float[] middle = new float[width];
    float[] down = new float[width];
    float[] calm = new float[width];
    along(plane, 0, middle);
    System.arraycopy(middle, 0, up, 0, width);
    for (int y = 0; y < height; y++) {
      along(plane, Math.min(height - 1, y + 1) * width, down);
      for (int x = 0; x < width; x++) {
        calm[x] = 0.25f * (up[x] + down[x]) + 0.5f * middle[x];
      }
      then.change(y, calm);
      System.arraycopy(calm, 0, both, y * width, width);
      float[] spare = up;
      up = middle;
      middle = down;
      down = spare;
    }
    return both;
  }

  /** Calms one row along itself. */
  private static void along(float[] plane, int row, float[] calm) {
    int last = calm.length - 1;
    for (int x = 1; x < last; x++) {
      calm[x] = 0.25f * (plane[row + x - 1] + plane[row + x + 1]) + 0.5f * plane[row + x];
    }
    calm[0] = 0.75f * plane[row] + 0.25f * plane[row + Math.min(1, last)];
    calm[last] = 0.75f * plane[row + last] + 0.25f * plane[row + Math.max(0, last - 1)];
  }
}
