// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;

/**
 * Tells leaf made pale by gloss, or by a blurred rim, from a material of its own.
 *
 * <p>Gloss adds white to the leaf's colour, blur and haze add what lies beside it: it turns paler
 * along the line to no colour, and the brightest of it is nearly as bright as the leaf or brighter.
 * Moss and foam that look like pale leaf are of another hue, or darker than the leaf over them even
 * where the sun shines.
 */
final class PaleLeaf {
  /** The leaf lies this much further out on the line than its gloss (working value). */
  private static final double VIVIDER = 0.3;

  /** Cosine of 15 degrees: within this is one hue (working value). */
  private static final double ONE_HUE = 0.966;

  /** There is at least this much leaf for so much pale leaf (working value). */
  private static final double LEAST_LEAF = 0.7;

  /**
   * Nine tenths of pale leaf reach up to this share of the leaf's light at least; moss and wet foam
   * are darker (working value).
   */
  private static final double LEAST_LIGHT = 0.7;

  private PaleLeaf() {}

  /**
   * Says whether a cluster of colours is pale leaf.
   *
   * @param mode its commonest colour, ln(G/R) and ln(G/B)
   * @param cluster its colours: ln(G/R), ln(G/B) and green light
   * @param all colours among which to look for the leaf, alike
   * @return true if leaf of its hue is there and more vivid
   */
  static boolean is(double[] mode, List<double[]> cluster, List<double[]> all) {
    double length = Math.hypot(mode[0], mode[1]);
    double[] leaf =
        all.stream()
            .filter(s -> Math.hypot(s[0], s[1]) > length + VIVIDER)
            .filter(
                s -> s[0] * mode[0] + s[1] * mode[1] > ONE_HUE * length * Math.hypot(s[0], s[1]))
            .mapToDouble(s -> s[2])
            .toArray();
    double[] light = cluster.stream().mapToDouble(s -> s[2]).toArray();
    return leaf.length >= Math.max(1, LEAST_LEAF * light.length)
        && Quantile.of(light, 0.9) > LEAST_LIGHT * Quantile.of(leaf, 0.5);
  }
}
