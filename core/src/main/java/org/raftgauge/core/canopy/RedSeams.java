// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Closes the seams between the red and the green of one leaf over a hole: where one turns into the
 * other it is brown, as dull as the plug under it. A seam is narrow and as light as the leaf on
 * both of its sides; what shows between two leaves is darker.
 */
final class RedSeams {
  /** Half the width of the widest seam, px. */
  private static final int HALF_PX = 2;

  /** A seam has at least this share of the light of the leaf about it (working value). */
  private static final double LIGHT = 0.6;

  private RedSeams() {}

  /**
   * Closes seams.
   *
   * @param leaf the canopy, changed in place
   * @param luminance of each pixel, linear
   * @param places where they may be: in holes where leaf is red
   * @param size width and height, px
   */
  static void close(boolean[] leaf, float[] luminance, boolean[] places, int[] size) {
    boolean[] outside = BoxFilter.any(leaf, size[0], size[1], HALF_PX);
    for (int i = 0; i < outside.length; i++) {
      outside[i] = !outside[i];
    }
    boolean[] open = BoxFilter.any(outside, size[0], size[1], HALF_PX);
    float[] about = MaskMean.of(luminance, leaf, size, HALF_PX);
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= places[i] && !open[i] && luminance[i] > LIGHT * about[i];
    }
  }
}
