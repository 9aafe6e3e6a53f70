// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.raftgauge.core.pixels.Srgb;

/**
 * Tells how much of an edge pixel is leaf: a {@link Mixture} of the light of the leaf and of what
 * is beside it, both read from the sure pixels nearest to it. Gaps that leaves' colour has bled
 * into are looked at once more ({@link BledGaps}).
 */
final class EdgeMix {
  /** Pixels this near to the threshold's outline may be mixed. */
  private static final int BAND_PX = 2;

  /** Sure pixels are looked for in a square of this half side. */
  static final int REACH_PX = 5;

  /**
   * Spread of the weights with which sure pixels count: the nearest ones tell most, since the
   * ground darkens in the shelter of a leaf within a few pixels of it.
   */
  private static final double NEAR_PX = 1.5;

  /** Weight of each place of the square about a pixel, row by row. */
  static final float[] WEIGHTS = weights();

  private static final byte GROUND = 0;
  private static final byte LEAF = 1;
  private static final byte MIXED = 2;

  /** Noise is read off every so many pixels. */
  private static final int NOISE_STEP = 31;

  private final int width;
  private final int height;
  private final float[][] rgb;
  private final Mixture mixture;

  private EdgeMix(int width, int height, float[][] rgb, boolean[] leaf) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
    this.mixture = new Mixture(noise(leaf));
  }

  /**
   * Turns a hard mask into coverage, 0..255 a pixel; {@code rgb} holds three planes of linear
   * light.
   */
  static byte[] coverage(int width, int height, float[][] rgb, boolean[] leaf) {
    return new EdgeMix(width, height, rgb, leaf).mix(leaf);
  }

  /**
   * Standard deviation of a channel's noise on the ground, from the median of how far pixels lie
   * from the middle of their neighbours in the row.
   */
  private double noise(boolean[] leaf) {
    double[] off = new double[leaf.length / NOISE_STEP];
    int n = 0;
    for (int i = 1; i < leaf.length - 1 && n < off.length; i += NOISE_STEP) {
      if (!leaf[i - 1] && !leaf[i] && !leaf[i + 1] && rgb[1][i] > 0) {
        float[] plane = rgb[n % 3];
        off[n++] = Math.abs(plane[i] - 0.5 * (plane[i - 1] + plane[i + 1]));
      }
    }
    // A normal spread's median distance is 0.674 of it; the mean of two adds half its square.
    return n == 0 ? 0 : Quantile.of(Arrays.copyOf(off, n), 0.5) / (0.674 * Math.sqrt(1.5));
  }

  private byte[] mix(boolean[] leaf) {
    boolean[] grown = BoxFilter.any(leaf, width, height, BAND_PX);
    boolean[] other = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      other[i] = !leaf[i];
    }
    boolean[] nearOther = BoxFilter.any(other, width, height, BAND_PX);
    byte[] sure = new byte[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      sure[i] = !nearOther[i] ? LEAF : grown[i] ? MIXED : GROUND;
    }
    byte[] coverage = new byte[leaf.length];
    ThinLeaf thin = new ThinLeaf(width, height, rgb, leaf);
    double[] own = new double[3];
    double[] inner = new double[4];
    double[] outer = new double[4];
    for (int i = 0; i < leaf.length; i++) {
      if (sure[i] == LEAF) {
        coverage[i] = (byte) 255;
      } else if (sure[i] == MIXED) {
        means(i, sure, inner, outer);
        OptionalDouble share = OptionalDouble.empty();
        if (inner[3] >= 2 && outer[3] >= 2) {
          light(i, own);
          share = mixture.share(own, inner, outer, leaf[i]);
        } else if (outer[3] >= 2) {
          share = OptionalDouble.of(thin.share(i, Srgb.luminance(outer[0], outer[1], outer[2])));
        }
        coverage[i] = coded(share.orElse(leaf[i] ? 1 : 0));
      }
    }
    return new BledGaps(width, height, rgb, mixture).lookInto(coverage, leaf);
  }

  private void light(int i, double[] light) {
    for (int c = 0; c < 3; c++) {
      light[c] = rgb[c][i];
    }
  }

  private static float[] weights() {
    int side = 2 * REACH_PX + 1;
    float[] weights = new float[side * side];
    for (int k = 0; k < weights.length; k++) {
      double dx = k % side - REACH_PX;
      double dy = Math.floorDiv(k, side) - REACH_PX;
      weights[k] = (float) Math.exp(-0.5 * (dx * dx + dy * dy) / (NEAR_PX * NEAR_PX));
    }
    return weights;
  }

  /**
   * Writes the mean light of the sure pixels of leaf and of ground about a pixel, the nearer the
   * weightier; how many in place 3.
   */
  private void means(int at, byte[] sure, double[] inner, double[] outer) {
    float[] reds = rgb[0];
    float[] greens = rgb[1];
    float[] blues = rgb[2];
    int middle = at % width;
    int line = at / width;
    int left = Math.max(0, middle - REACH_PX);
    int right = Math.min(width - 1, middle + REACH_PX);
    int bottom = Math.min(height - 1, line + REACH_PX);
    int leaves = 0;
    int grounds = 0;
    float leafWeight = 0;
    float groundWeight = 0;
    float leafRed = 0;
    float leafGreen = 0;
    float leafBlue = 0;
    float red = 0;
    float green = 0;
    float blue = 0;
    for (int y = Math.max(0, line - REACH_PX); y <= bottom; y++) {
      int row = (y - line + REACH_PX) * (2 * REACH_PX + 1) - middle + REACH_PX;
      for (int x = left, i = y * width + left; x <= right; x++, i++) {
        float weight = WEIGHTS[row + x];
        if (sure[i] == LEAF) {
          leaves++;
          leafWeight += weight;
          leafRed += weight * reds[i];
          leafGreen += weight * greens[i];
          leafBlue += weight * blues[i];
        } else if (sure[i] == GROUND) {
          grounds++;
          groundWeight += weight;
          red += weight * reds[i];
          green += weight * greens[i];
          blue += weight * blues[i];
        }
      }
    }
    double perLeaf = 1 / Math.max(leafWeight, 1e-12);
    inner[0] = leafRed * perLeaf;
    inner[1] = leafGreen * perLeaf;
    inner[2] = leafBlue * perLeaf;
    inner[3] = leaves;
    double perGround = 1 / Math.max(groundWeight, 1e-12);
    outer[0] = red * perGround;
    outer[1] = green * perGround;
    outer[2] = blue * perGround;
    outer[3] = grounds;
  }

  /** Codes a share, 0 to 255. */
  static byte coded(double share) {
    return (byte) Math.round(255 * Math.max(0, Math.min(1, share)));
  }
}
