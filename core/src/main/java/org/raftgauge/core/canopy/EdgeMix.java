// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

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

  /** Sure pixels are averaged in a square of this half side. */
  private static final int REACH_PX = 5;

  /** Squared contrast of leaf and background, in linear light, under which noise decides. */
  private static final double LEAST_CONTRAST = 4e-4;

  /**
   * Before ground this much darker than the leaf, brightness alone tells the mixture: colour is
   * half as sharp.
   */
  private static final double DARK_GROUND = 0.5;

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

  private EdgeMix(int width, int height, float[][] rgb) {
    this.width = width;
    this.height = height;
    this.rgb = rgb;
  }

  /**
   * Turns a hard mask into coverage, 0..255 a pixel; {@code rgb} holds three planes of linear
   * light.
   */
  static byte[] coverage(int width, int height, float[][] rgb, boolean[] leaf) {
    return new EdgeMix(width, height, rgb).mix(leaf);
  }

  private byte[] mix(boolean[] leaf) {
    boolean[] grown = BoxFilter.any(leaf, width, height, BAND_PX);
    boolean[] other = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      other[i] = !leaf[i];
    }
    boolean[] nearOther = BoxFilter.any(other, width, height, BAND_PX);
    float[][] inner = local(leaf, nearOther);
    float[][] outer = local(other, grown);
    byte[] coverage = new byte[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      if (!grown[i]) {
        continue;
      }
      coverage[i] = nearOther[i] ? share(i, inner, outer, leaf[i]) : (byte) 255;
    }
    return coverage;
  }

  /**
   * Mean light of the sure pixels about each pixel: those of a side that are not near the other;
   * and how many.
   */
  private float[][] local(boolean[] side, boolean[] unsure) {
    float[] weight = new float[side.length];
    for (int i = 0; i < side.length; i++) {
      weight[i] = side[i] && !unsure[i] ? 1 : 0;
    }
    float[][] sums = new float[4][];
    for (int c = 0; c < 3; c++) {
      float[] plane = new float[side.length];
      for (int i = 0; i < side.length; i++) {
        plane[i] = weight[i] * rgb[c][i];
      }
      sums[c] = BoxFilter.sum(plane, width, height, REACH_PX);
    }
    sums[3] = BoxFilter.sum(weight, width, height, REACH_PX);
    return sums;
  }

  private byte share(int i, float[][] inner, float[][] outer, boolean leaf) {
    float ni = inner[3][i];
    float no = outer[3][i];
    byte hard = leaf ? (byte) 255 : 0;
    if (ni < 2 || no < 2) {
      return hard;
    }
    double li = Srgb.luminance(inner[0][i], inner[1][i], inner[2][i]) / ni;
    double lo = Srgb.luminance(outer[0][i], outer[1][i], outer[2][i]) / no;
    if (lo < DARK_GROUND * li) {
      double own = Srgb.luminance(rgb[0][i], rgb[1][i], rgb[2][i]);
      return coded((own - lo) / (li - lo));
    }
    double dot = 0;
    double size = 0;
    double away = 0;
    for (int c = 0; c < 3; c++) {
      double b = outer[c][i] / no;
      double d = inner[c][i] / ni - b;
      double p = rgb[c][i] - b;
      dot += p * d;
      size += d * d;
      away += p * p;
    }
    double mix = dot / Math.max(size, 1e-12);
    if (size < LEAST_CONTRAST || away - mix * dot > OFF_LINE * size) {
      return hard;
    }
    double colour = leaf ? mix : colourShare(i, inner, outer);
    return coded(mix - colour > SHADE ? colour : mix);
  }

  /**
   * The share told by colour alone: what is left of the pixel's and the leaf's light when their
   * part along the ground's own colour is taken away. Shade on the ground darkens it along its own
   * colour and so counts for nothing.
   */
  private double colourShare(int i, float[][] inner, float[][] outer) {
    double ground = 0;
    double pixelAlong = 0;
    double leafAlong = 0;
    for (int c = 0; c < 3; c++) {
      ground += outer[c][i] * (double) outer[c][i];
      pixelAlong += rgb[c][i] * outer[c][i];
      leafAlong += inner[c][i] / inner[3][i] * outer[c][i];
    }
    double dot = 0;
    double size = 1e-9;
    for (int c = 0; c < 3; c++) {
      double p = rgb[c][i] - pixelAlong / ground * outer[c][i];
      double l = inner[c][i] / inner[3][i] - leafAlong / ground * outer[c][i];
      dot += p * l;
      size += l * l;
    }
    return dot / size;
  }

  private static byte coded(double share) {
    return (byte) Math.round(255 * Math.max(0, Math.min(1, share)));
  }
}
