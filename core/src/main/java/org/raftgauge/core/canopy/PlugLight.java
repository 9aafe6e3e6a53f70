// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.raftgauge.core.pixels.Srgb;

/** How bright the holes of a deck are beside the leaves: their plugs, or the water in them. */
final class PlugLight {
  /** A hole that shows less than this tells nothing, px. */
  private static final int LEAST_PX = 12;

  /**
   * What is common shows in more than this share of the holes, and in more than so many (working
   * values).
   */
  private static final double COMMON = 0.3;

  private static final double FEW = 2;

  /** It fills a hole to this share where it counts as shown (working value). */
  private static final double FILLED = 0.1;

  private final Parts holes;

  /** Where a hole's wall is none of what is seen: its width is often a guess. */
  private final boolean[] inner;

  /**
   * Sets up the look.
   *
   * @param width px
   * @param height px
   * @param hole where planting holes lie
   * @param holePx their diameter, px
   */
  PlugLight(int width, int height, boolean[] hole, double holePx) {
    this.holes = Parts.of(hole, width, height);
    boolean[] outside = new boolean[hole.length];
    for (int i = 0; i < hole.length; i++) {
      outside[i] = !hole[i];
    }
    this.inner = BoxFilter.any(outside, width, height, (int) (holePx / 8));
    for (int i = 0; i < hole.length; i++) {
      inner[i] = hole[i] && !inner[i];
    }
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
    boolean many = light.length > Math.max(FEW, COMMON * holes.count());
    return many ? Quantile.of(light, 0.5) : 0;
  }

  /** Returns the median light of each hole that shows enough of what counts. */
  private double[] ofHoles(float[][] even, boolean[] leaf, boolean[] counts, double filled) {
    double[][] light = new double[holes.count()][];
    int[] n = new int[light.length];
    for (int i = 0; i < leaf.length; i++) {
      if (inner[i] && !leaf[i] && counts[i]) {
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
