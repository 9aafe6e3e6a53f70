// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.Srgb;

/**
 * Tells how much of a pixel is leaf where that is too thin to have pixels that are surely leaf:
 * stalks and narrow tips.
 *
 * <p>Before a dark ground their colour bleeds into it, for cameras and JPEG keep colour at half the
 * resolution of brightness; so brightness tells, between the ground's and that of the brighter of
 * what was taken for leaf near by. Before other ground it is all or nothing.
 */
final class ThinLeaf {
  private final int width;
  private final int height;
  private final float[][] rgb;
  private final boolean[] leaf;

  /**
   * Sets up.
   *
   * @param width px
   * @param height px
   * @param rgb three planes of linear light
   * @param leaf the canopy
   */
  ThinLeaf(int width, int height, float[][] rgb, boolean[] leaf) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
    this.leaf = leaf;
  }

  /**
   * Returns how much of a pixel is leaf.
   *
   * @param at the pixel
   * @param ground relative luminance of the ground about it
   * @return 0 to 1 where the ground is dark; past both where it is brighter or darker than either
   */
  double share(int at, double ground) {
    double light = brighter(at);
    if (ground >= Mixture.DARK_GROUND * light) {
      return leaf[at] ? 1 : 0;
    }
    return (luminance(at) - ground) / (light - ground);
  }

  /** Mean brightness of the leaf about a pixel, each weighted by its square. */
  private double brighter(int at) {
    int middle = at % width;
    int line = at / width;
    int right = Math.min(width - 1, middle + EdgeMix.REACH_PX);
    int bottom = Math.min(height - 1, line + EdgeMix.REACH_PX);
    double sum = 0;
    double weights = 1e-12;
    for (int y = Math.max(0, line - EdgeMix.REACH_PX); y <= bottom; y++) {
      int left = Math.max(0, middle - EdgeMix.REACH_PX);
      for (int x = left, i = y * width + left; x <= right; x++, i++) {
        if (leaf[i]) {
          double light = luminance(i);
          sum += light * light * light;
          weights += light * light;
        }
      }
    }
    return sum / weights;
  }

  private double luminance(int i) {
    return Srgb.luminance(rgb[0][i], rgb[1][i], rgb[2][i]);
  }
}
