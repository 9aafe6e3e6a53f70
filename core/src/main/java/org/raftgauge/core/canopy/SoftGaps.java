// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Thins leaf in gaps that a soft photo has filled. Where haze or a camera out of focus smears edges
 * over the narrow gaps of a young plant, these are more leaf than plug by their light, and so were
 * taken for leaf altogether: what lies darker between leaf and plug there is that much of both.
 *
 * <p>Only valleys are thinned, not what is a little darker as leaves are by themselves. All limits
 * are working values, tried on hazy photos of four seeds.
 */
final class SoftGaps {
  /** The plug is looked for in a square of this half side, px. */
  private static final int PLUG_PX = 8;

  /** Leaf is looked for within this distance, px. */
  private static final int LEAF_PX = 5;

  /** Gaps reach this far over the hole's rim, px. */
  private static final int RIM_PX = 3;

  /** Coverage under this, of 255, is hardly leaf, and from the next on nearly all leaf. */
  private static final int HARDLY = 64;

  private static final int NEARLY = 200;

  /** A plug brighter than this share of the leaf tells no valley. */
  private static final double DARK_PLUG = 0.75;

  /** What lies nearer to the leaf than this share of the way from the plug is leaf. */
  private static final double VALLEY = 0.7;

  /** Squared distance that halves a plug pixel's weight, px2. */
  private static final double NEAR_PX2 = 4;

  /** Weight of the plug, and pixels of leaf, that must be there. */
  private static final double LEAST_PLUG = 0.15;

  private static final int LEAST_LEAF = 6;

  private final int width;
  private final int height;
  private final float[] luminance;
  private final double[] found = new double[(2 * LEAF_PX + 1) * (2 * LEAF_PX + 1)];

  SoftGaps(int width, int height, float[] luminance) {
    this.width = width;
    this.height = height;
    this.luminance = luminance;
  }

  /**
   * Thins.
   *
   * @param coverage 0..255 a pixel; changed in place
   * @param leaf what was taken for leaf
   * @param hole where the board has holes
   */
  void thin(byte[] coverage, boolean[] leaf, boolean[] hole) {
    boolean[] near = BoxFilter.any(hole, width, height, RIM_PX);
    byte[] before = coverage.clone();
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        if (leaf[i] && near[i]) {
          double plug = plug(x, y, before, leaf, hole);
          double usual = usualLeaf(x, y, before, leaf);
          double share = (luminance[i] - plug) / (usual - plug);
          if (plug < DARK_PLUG * usual && share < VALLEY) {
            coverage[i] = (byte) Math.min(before[i] & 0xff, EdgeMix.coded(share) & 0xff);
          }
        }
      }
    }
  }

  /** Returns the light of the plug near by, the nearer the weightier; not a number without any. */
  private double plug(int x, int y, byte[] coverage, boolean[] leaf, boolean[] hole) {
    double sum = 0;
    double weights = 0;
    for (int v = Math.max(0, y - PLUG_PX); v <= Math.min(height - 1, y + PLUG_PX); v++) {
      for (int u = Math.max(0, x - PLUG_PX); u <= Math.min(width - 1, x + PLUG_PX); u++) {
        int i = v * width + u;
        if (hole[i] && !leaf[i] && (coverage[i] & 0xff) < HARDLY) {
          double weight = 1 / (NEAR_PX2 + (u - x) * (u - x) + (v - y) * (v - y));
          weights += weight;
          sum += weight * luminance[i];
        }
      }
    }
    return weights < LEAST_PLUG ? Double.NaN : sum / weights;
  }

  /**
   * Returns the mean light of the leaf near by that is brighter than most of it: the gap itself was
   * taken for leaf. Not a number where there is too little.
   */
  private double usualLeaf(int x, int y, byte[] coverage, boolean[] leaf) {
    int n = 0;
    double sum = 0;
    for (int v = Math.max(0, y - LEAF_PX); v <= Math.min(height - 1, y + LEAF_PX); v++) {
      for (int u = Math.max(0, x - LEAF_PX); u <= Math.min(width - 1, x + LEAF_PX); u++) {
        int i = v * width + u;
        boolean inside = (u - x) * (u - x) + (v - y) * (v - y) <= LEAF_PX * LEAF_PX;
        if (inside && leaf[i] && (coverage[i] & 0xff) > NEARLY) {
          found[n++] = luminance[i];
          sum += luminance[i];
        }
      }
    }
    if (n < LEAST_LEAF) {
      return Double.NaN;
    }
    double mean = sum / n;
    double bright = 0;
    int brighter = 0;
    for (int k = 0; k < n; k++) {
      if (found[k] >= mean) {
        bright += found[k];
        brighter++;
      }
    }
    return bright / brighter;
  }
}
