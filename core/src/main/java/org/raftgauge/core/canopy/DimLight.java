// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/**
 * Looks again for green leaf in little light. Colours so dark that a camera's noise could have made
 * them are drained of their colour by {@link LeafRule#FLOOR}, a share of white. Where a board sends
 * much less than white, that share is more than its noise asks for: then the light is raised as far
 * as the noise that the photo shows allows. Noise and the bleeding of colour in JPEG photos fray
 * the outlines of what is found so; therefore it counts only near where it is wider than a rim.
 */
final class DimLight {
  /** The floor lies this many standard deviations of the calmed noise above black. */
  private static final double SPREADS = 4;

  /** What one round of {@link Binomial} leaves of a pixel's own noise. */
  private static final double CALMED = 0.375;

  /** A board that sends this share of white needs no raising. */
  private static final double BRIGHT_ENOUGH = 0.5;

  /** Noise is read off every so many pixels. */
  private static final int STEP = 31;

  private final int[] size;
  private final float raise;

  private DimLight(int[] size, double raise) {
    this.size = size;
    this.raise = (float) raise;
  }

  /**
   * Sets up the second look.
   *
   * @param size width and height, px
   * @param rgb three planes of linear light as the camera gave it
   * @param light on the board
   */
  static DimLight of(int[] size, float[][] rgb, EvenedLight light) {
    double white = 1 / light.gainsAt(size[0] / 2, size[1] / 2, size[0], size[1])[1];
    double board = light.boardGreen();
    if (light.source() != LightSource.BOARD || board > BRIGHT_ENOUGH * white) {
      return new DimLight(size, 1);
    }
    double least = SPREADS * CALMED * Math.max(1e-6, noise(rgb));
    double raise = Math.min(white / board, LeafRule.FLOOR * white / least);
    return new DimLight(size, Math.max(1, raise));
  }

  /**
   * Sets the green leaf in the canopy that only raised light tells.
   *
   * @param leaf the canopy
   * @param even three planes of evened light
   * @param counts where green leaf may be added
   * @param threshold score past which it is leaf
   */
  void add(boolean[] leaf, float[][] even, boolean[] counts, double threshold) {
    if (raise <= 1) {
      return;
    }
    ColourTable table = LeafModel.GREEN_LEAF.table();
    boolean[] more = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      more[i] =
          !leaf[i]
              && counts[i]
              && table.score(raise * even[0][i], raise * even[1][i], raise * even[2][i])
                  > threshold;
    }
    boolean[] near = BoxFilter.any(NoRim.of(leaf, more, size), size[0], size[1], NoRim.ABOUT_PX);
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= more[i] && near[i];
    }
  }

  /** Returns evened light raised; the same planes where it needs no raising. */
  float[][] raised(float[][] even) {
    if (raise <= 1) {
      return even;
    }
    float[][] raised = new float[even.length][];
    for (int c = 0; c < even.length; c++) {
      raised[c] = even[c].clone();
      for (int i = 0; i < raised[c].length; i++) {
        raised[c][i] *= raise;
      }
    }
    return raised;
  }

  /**
   * Standard deviation of a channel's noise, from the median of how far pixels lie from the middle
   * of their neighbours in the row.
   */
  private static double noise(float[][] rgb) {
    double[] off = new double[rgb[0].length / STEP];
    int n = 0;
    for (int i = 1; i < rgb[0].length - 1 && n < off.length; i += STEP) {
      if (rgb[1][i] > 0) {
        float[] plane = rgb[n % 3];
        off[n++] = Math.abs(plane[i] - 0.5 * (plane[i - 1] + plane[i + 1]));
      }
    }
    // A normal spread's median distance is 0.674 of it; the mean of two adds half its square.
    return n == 0 ? 0 : Quantile.of(Arrays.copyOf(off, n), 0.5) / (0.674 * Math.sqrt(1.5));
  }
}
