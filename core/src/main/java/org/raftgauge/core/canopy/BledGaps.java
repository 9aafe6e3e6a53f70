// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.OptionalDouble;

/**
 * Looks once more at what was taken for leaf near the edges of thin leaves, where their colour has
 * bled into the gaps between them: what is purest leaf and purest ground near by, by a first
 * coverage, tells what such a pixel is mixed of. Dark ground is left as it was, for there
 * brightness has told already. Its limits are working values.
 */
final class BledGaps {
  /** Pixels this near to one that is hardly leaf are looked at. */
  private static final int GAP_PX = 3;

  /** Leaf this near by is needed. */
  private static final int LEAF_PX = 2;

  /** Coverage under this, of 255, is hardly leaf, and from the next on nearly all leaf. */
  private static final int HARDLY = 64;

  private static final int NEARLY = 192;

  /** Coverage counts by this power of it: half a leaf tells little of a leaf's colour. */
  private static final int PURITY = 4;

  /** Weights, of nearness times purity, that either side must add up to. */
  private static final double LEAST_WEIGHT = 0.5;

  private static final float[] PURE = pure();

  /** What turns coverage into the share of leaf, and of ground, 0..255. */
  private static final int OF_LEAF = 0;

  private static final int OF_GROUND = 0xff;

  private final int width;
  private final int height;
  private final float[][] rgb;
  private final Mixture mixture;

  /** Mean light of either side. */
  private final double[] leafLight = new double[3];

  private final double[] groundLight = new double[3];

  BledGaps(int width, int height, float[][] rgb, Mixture mixture) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
    this.mixture = mixture;
  }

  /**
   * Looks into gaps.
   *
   * @param coverage 0..255 a pixel
   * @param leaf what was taken for leaf
   * @return the coverage with those pixels told anew
   */
  byte[] lookInto(byte[] coverage, boolean[] leaf) {
    boolean[] hardly = new boolean[coverage.length];
    boolean[] nearly = new boolean[coverage.length];
    for (int i = 0; i < coverage.length; i++) {
      hardly[i] = (coverage[i] & 0xff) < HARDLY;
      nearly[i] = (coverage[i] & 0xff) >= NEARLY;
    }
    boolean[] byGap = BoxFilter.any(hardly, width, height, GAP_PX);
    boolean[] byLeaf = BoxFilter.any(nearly, width, height, LEAF_PX);
    byte[] told = coverage.clone();
    double[] own = new double[3];
    for (int i = 0; i < coverage.length; i++) {
      if (leaf[i] && byGap[i] && byLeaf[i] && bothSides(i, coverage)) {
        for (int c = 0; c < 3; c++) {
          own[c] = rgb[c][i];
        }
        OptionalDouble share = mixture.share(own, leafLight, groundLight, true);
        told[i] = share.isPresent() ? EdgeMix.coded(share.getAsDouble()) : told[i];
      }
    }
    return told;
  }

  /** Reads the light of both sides; says whether there is enough of both and no dark ground. */
  private boolean bothSides(int at, byte[] coverage) {
    return side(at, coverage, OF_GROUND, groundLight)
        && side(at, coverage, OF_LEAF, leafLight)
        && !Mixture.byBrightness(leafLight, groundLight);
  }

  /**
   * Writes the mean light of one side about a pixel, the nearer and purer the weightier; says
   * whether there is enough of it. Bits of coverage that are set in {@code of} are turned over.
   */
  private boolean side(int at, byte[] coverage, int of, double[] light) {
    float[] reds = rgb[0];
    float[] greens = rgb[1];
    float[] blues = rgb[2];
    int reach = EdgeMix.REACH_PX;
    int middle = at % width;
    int line = at / width;
    int left = Math.max(0, middle - reach);
    int right = Math.min(width - 1, middle + reach);
    int bottom = Math.min(height - 1, line + reach);
    double weights = 0;
    double red = 0;
    double green = 0;
    double blue = 0;
    for (int y = Math.max(0, line - reach); y <= bottom; y++) {
      int row = (y - line + reach) * (2 * reach + 1) - middle + reach;
      for (int x = left, i = y * width + left; x <= right; x++, i++) {
        int share = (coverage[i] & 0xff) ^ of;
        if (share != 0) {
          double weight = EdgeMix.WEIGHTS[row + x] * PURE[share];
          weights += weight;
          red += weight * reds[i];
          green += weight * greens[i];
          blue += weight * blues[i];
        }
      }
    }
    light[0] = red / weights;
    light[1] = green / weights;
    light[2] = blue / weights;
    return weights >= LEAST_WEIGHT;
  }

  private static float[] pure() {
    float[] pure = new float[256];
    for (int covered = 0; covered < pure.length; covered++) {
      pure[covered] = (float) Math.pow(covered / 255.0, PURITY);
    }
    return pure;
  }
}
