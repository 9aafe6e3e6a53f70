// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;

/**
 * Lifts a veil: haze, a fogged lens or stray light adds the same light to every pixel and drains
 * the colour of what is dark.
 *
 * <p>Something on or about a board is always near black: a hole, a marker, water, deep shade. What
 * its darkest pixels still show is the veil. Source: dark-object subtraction (Chavez 1988, Remote
 * Sensing of Environment 24:459-479; from memory).
 */
final class Veil {
  /** The darkest share of the pixels: some noise and a few dead pixels lie under it. */
  private static final double DARKEST = 0.003;

  /** Black objects reflect this much of white: less than that above zero is no veil. */
  private static final double BLACK = 0.03;

  private final byte[] rgb;
  private final float[] light;

  private Veil(DeckImage deck) {
    this.rgb = deck.image().rgb();
    this.light = EvenedPixels.linear((float) Math.max(0, of(deck)));
  }

  /** Looks for the veil over a deck picture. */
  static Veil over(DeckImage deck) {
    return new Veil(deck);
  }

  /** Splits the picture into three planes of linear light, less the veil. */
  float[][] lifted() {
    return EvenedPixels.planes(rgb, light);
  }

  /** Returns the relative luminance of the lifted picture. */
  float[] luminance() {
    double[] red = new double[light.length];
    double[] green = new double[light.length];
    double[] blue = new double[light.length];
    for (int v = 0; v < light.length; v++) {
      red[v] = Srgb.luminance(light[v], 0, 0);
      green[v] = Srgb.luminance(0, light[v], 0);
      blue[v] = Srgb.luminance(0, 0, light[v]);
    }
    float[] luminance = new float[rgb.length / 3];
    for (int i = 0, at = 0; i < luminance.length; i++, at += 3) {
      luminance[i] =
          (float) (red[rgb[at] & 0xff] + green[rgb[at + 1] & 0xff] + blue[rgb[at + 2] & 0xff]);
    }
    return luminance;
  }

  /** Returns the veil's light; 0 or less where there is none. */
  private static double of(DeckImage deck) {
    int[][] levels = new int[3][256];
    byte[] rgb = deck.image().rgb();
    int width = deck.image().width();
    int n = 0;
    for (int y = 0; y < deck.image().height(); y++) {
      for (int x = 2 - (y * width + 2) % 3; x < width; x += 3) {
        if (deck.seen(x, y)) {
          int i = 3 * (y * width + x);
          levels[0][rgb[i] & 0xff]++;
          levels[1][rgb[i + 1] & 0xff]++;
          levels[2][rgb[i + 2] & 0xff]++;
          n++;
        }
      }
    }
    double veil = Double.MAX_VALUE;
    for (int[] channel : levels) {
      veil = Math.min(veil, darkest(channel, n) - BLACK);
    }
    return veil;
  }

  /** Returns the linear light that the darkest share of n pixels stays under. */
  private static double darkest(int[] levels, int n) {
    int under = 0;
    int level = 0;
    while (level < 255 && under + levels[level] <= (int) (DARKEST * n)) {
      under += levels[level];
      level++;
    }
    return n == 0 ? 0 : Srgb.linear((byte) level);
  }
}
