// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.Srgb;

/**
 * How green each pixel of a picture is ({@code -a*} of CIELAB), calmed by as much as the picture is
 * noisy, how light it is, and its colour's cell in the table of {@link LeafColours}.
 *
 * <p>Owns its arrays; read only.
 */
final class Greenness {
  /** Smoothing per noise, px a unit of a*: brings the chroma noise of JPEG photos near 1. */
  private static final double NOISE_GAIN = 0.5;

  private static final double LEAST_SIGMA_PX = 0.8;

  /** Thin leaves vanish under more. */
  private static final double MOST_SIGMA_PX = 2.5;

  /** Histogram of a*'s steps: cells of 0.02 up to 40. */
  private static final double STEP_CELL = 0.02;

  private static final int STEP_CELLS = 2000;

  final int width;
  final int height;

  /** True where the photo shows the place. */
  final boolean[] seen;

  /** Greenness, -a*. */
  final float[] green;

  /** Lightness, L*. */
  final float[] light;

  /** Cell of the colour table. */
  final int[] cell;

  private Greenness(int width, int height, boolean[] seen) {
    this.width = width;
    this.height = height;
    this.seen = seen;
    this.green = new float[seen.length];
    this.light = new float[seen.length];
    this.cell = new int[seen.length];
  }

  /** Reads a picture of interleaved code values; {@code seen} says which pixels count. */
  static Greenness of(byte[] rgb, int width, int height, boolean[] seen) {
    Greenness greenness = new Greenness(width, height, seen);
    double sigma = NOISE_GAIN * greenness.noise(rgb);
    double kept = Math.max(LEAST_SIGMA_PX, Math.min(MOST_SIGMA_PX, sigma));
    greenness.read(Gaussian.blur(rgb, width, height, kept));
    return greenness;
  }

  private void read(byte[] rgb) {
    for (int i = 0; i < green.length; i++) {
      Cielab lab = lab(rgb, i);
      green[i] = (float) -lab.a();
      light[i] = (float) lab.l();
      cell[i] = LeafColours.cell(lab);
    }
  }

  private static Cielab lab(byte[] rgb, int i) {
    return Cielab.ofLinear(
        Srgb.linear(rgb[3 * i]), Srgb.linear(rgb[3 * i + 1]), Srgb.linear(rgb[3 * i + 2]));
  }

  /** Median size of a*'s step over two pixels of a row, from every second row. */
  private double noise(byte[] rgb) {
    int[] histogram = new int[STEP_CELLS];
    int all = 0;
    double[] a = new double[width];
    for (int y = 0; y < height; y += 2) {
      for (int x = 0; x < width; x++) {
        int i = y * width + x;
        a[x] = lab(rgb, i).a();
        if (x >= 2 && seen[i] && seen[i - 2]) {
          int at = (int) (Math.abs(a[x] - a[x - 2]) / STEP_CELL);
          histogram[Math.min(STEP_CELLS - 1, at)]++;
          all++;
        }
      }
    }
    int below = 0;
    int at = 0;
    while (at < STEP_CELLS - 1 && 2 * (below + histogram[at]) < all) {
      below += histogram[at++];
    }
    return (at + 0.5) * STEP_CELL;
  }
}
