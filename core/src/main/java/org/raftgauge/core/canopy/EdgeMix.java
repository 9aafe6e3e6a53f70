// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import org.raftgauge.core.pixels.Srgb;

/**
 * Tells how much of an edge pixel is leaf: where it lies between the light of the leaf and the
 * light of what is beside it, both read from the sure pixels nearest to it.
 *
 * <p>A pixel across an edge mixes the light of both sides linearly: {@code coverage = (p - b) . (l
 * - b) / |l - b|^2}, with p, l and b the linear light of the pixel, the leaf and the background.
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

  private static final float[] WEIGHTS = weights();

  private static final byte GROUND = 0;
  private static final byte LEAF = 1;
  private static final byte MIXED = 2;

  /** Noise is read off every so many pixels. */
  private static final int NOISE_STEP = 31;

  /** Squared contrast of leaf and background, in linear light, under which 8 bits tell nothing. */
  private static final double LEAST_CONTRAST = 1e-4;

  /** What lies this many standard deviations of the photo's noise off is no noise. */
  private static final double SPREADS = 3;

  /**
   * Before ground this much darker than the leaf, brightness alone tells the mixture: colour is
   * half as sharp.
   */
  static final double DARK_GROUND = 0.5;

  /**
   * A pixel whose squared distance from the line between both sides is over this share of their
   * squared contrast shows a third thing, such as the wall of a hole, and is no mixture.
   */
  private static final double OFF_LINE = 0.03;

  /**
   * Outside the outline, colour telling of this much less leaf than light does means shade on the
   * ground, not noise.
   */
  private static final double SHADE = 0.25;

  private final int width;
  private final int height;
  private final float[][] rgb;
  private final double noise;

  private EdgeMix(int width, int height, float[][] rgb, boolean[] leaf) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
    this.noise = noise(leaf);
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
    double[] inner = new double[4];
    double[] outer = new double[4];
    for (int i = 0; i < leaf.length; i++) {
      if (sure[i] == LEAF) {
        coverage[i] = (byte) 255;
      } else if (sure[i] == MIXED) {
        means(i, sure, inner, outer);
        coverage[i] =
            inner[3] < 2 && outer[3] >= 2
                ? coded(thin.share(i, Srgb.luminance(outer[0], outer[1], outer[2])))
                : share(i, inner, outer, leaf[i]);
      }
    }
    return coverage;
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

  private byte share(int i, double[] inner, double[] outer, boolean leaf) {
    byte hard = leaf ? (byte) 255 : 0;
    if (inner[3] < 2 || outer[3] < 2) {
      return hard;
    }
    double li = Srgb.luminance(inner[0], inner[1], inner[2]);
    double lo = Srgb.luminance(outer[0], outer[1], outer[2]);
    if (lo < DARK_GROUND * li) {
      double own = Srgb.luminance(rgb[0][i], rgb[1][i], rgb[2][i]);
      return coded((own - lo) / (li - lo));
    }
    double dot = 0;
    double size = 0;
    double away = 0;
    for (int c = 0; c < 3; c++) {
      double b = outer[c];
      double d = inner[c] - b;
      double p = rgb[c][i] - b;
      dot += p * d;
      size += d * d;
      away += p * p;
    }
    double mix = dot / Math.max(size, 1e-12);
    double blur = SPREADS * SPREADS * noise * noise;
    if (size < Math.max(LEAST_CONTRAST, blur) || away - mix * dot > OFF_LINE * size + 2 * blur) {
      return hard;
    }
    return coded(leaf ? mix : unshaded(i, mix, inner, outer));
  }

  /**
   * The share told by colour alone, where it is surely less than {@code mix}: what is left of the
   * pixel's and the leaf's light when their part along the ground's own colour is taken away. Shade
   * on the ground darkens it along its own colour and so counts for nothing.
   */
  private double unshaded(int i, double mix, double[] inner, double[] outer) {
    double ground = 1e-12;
    double pixelAlong = 0;
    double leafAlong = 0;
    for (int c = 0; c < 3; c++) {
      ground += outer[c] * outer[c];
      pixelAlong += rgb[c][i] * outer[c];
      leafAlong += inner[c] * outer[c];
    }
    double dot = 0;
    double size = 1e-9;
    for (int c = 0; c < 3; c++) {
      double p = rgb[c][i] - pixelAlong / ground * outer[c];
      double l = inner[c] - leafAlong / ground * outer[c];
      dot += p * l;
      size += l * l;
    }
    double colour = dot / size;
    return mix - colour > Math.max(SHADE, SPREADS * noise / Math.sqrt(size)) ? colour : mix;
  }

  private static byte coded(double share) {
    return (byte) Math.round(255 * Math.max(0, Math.min(1, share)));
  }
}
