// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.raftgauge.core.pixels.Srgb;

/** How bright the holes of a deck are beside the leaves: their plugs, or the water in them. */
final class PlugLight {
  /** A hole that shows less than this tells nothing, px. */
  private static final int LEAST_PX = 12;

  /** What is common shows in more than this share of the holes, and in more than so many. */
  private static final double COMMON = 0.3;

  private static final double FEW = 2;

  /** It fills a hole to this share where it counts as shown (working value). */
  private static final double FILLED = 0.1;

  private final int width;
  private final int height;
  private final boolean[] hole;
  private final double holePx;

  /**
   * Sets up the look.
   *
   * @param width px
   * @param height px
   * @param hole where planting holes lie
   * @param holePx their diameter, px
   */
  PlugLight(int width, int height, boolean[] hole, double holePx) {
    this.width = width;
    this.height = height;
    this.hole = hole;
    this.holePx = holePx;
  }

  /** Returns a pixel's luminance in evened light. */
  static double luminance(float[][] even, int i) {
    return Srgb.luminance(even[0][i], even[1][i], even[2][i]);
  }

  /**
   * Returns the light of the usual hole: the median over the holes of what each shows beside leaf.
   *
   * @param even three planes of evened light
   * @param leaf the living canopy
   * @param counts where the deck is seen
   * @return luminance, 1 is white; 1 where no hole shows enough
   */
  double usual(float[][] even, boolean[] leaf, boolean[] counts) {
    double[] usual = ofHoles(even, leaf, counts, 0);
    return usual.length == 0 ? 1 : Quantile.of(usual, 0.5);
  }

  /**
   * Returns the light of what shows in many holes alike: the median over those that it fills to a
   * share at least.
   *
   * @param even three planes of evened light
   * @param leaf the living canopy
   * @param counts where it shows
   * @return luminance, 1 is white; 0 where fewer holes than plants die show it
   */
  double common(float[][] even, boolean[] leaf, boolean[] counts) {
    double[] light = ofHoles(even, leaf, counts, FILLED);
    boolean many = light.length > Math.max(FEW, COMMON * Parts.of(hole, width, height).count());
    return many ? Quantile.of(light, 0.5) : 0;
  }

  /** Returns the median light of each hole that shows enough of what counts. */
  private double[] ofHoles(float[][] even, boolean[] leaf, boolean[] counts, double filled) {
    Parts holes = Parts.of(hole, width, height);
    boolean[] outside = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      outside[i] = !hole[i];
    }
    // The hole's width is often a guess: its wall does not count.
    boolean[] wall = BoxFilter.any(outside, width, height, (int) (holePx / 8));
    double[][] light = new double[holes.count()][];
    int[] n = new int[light.length];
    for (int i = 0; i < leaf.length; i++) {
      if (hole[i] && !wall[i] && !leaf[i] && counts[i]) {
        int at = holes.label(i);
        light[at] = light[at] == null ? new double[holes.size(at)] : light[at];
        light[at][n[at]++] = luminance(even, i);
      }
    }
    return IntStream.range(0, light.length)
        .filter(at -> n[at] >= Math.max(LEAST_PX, filled * holes.size(at)))
        .mapToDouble(at -> Quantile.of(Arrays.copyOf(light[at], n[at]), 0.5))
        .toArray();
  }
}
