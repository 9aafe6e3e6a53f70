// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.util.Arrays;
import org.raftgauge.core.canopy.Cielab;
import org.raftgauge.core.canopy.ColourDifference;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

/**
 * A photo of a chart of 24 patches of known colour, and how far its colours are off, before and
 * after what a run does about the light: each channel divided by that of a white of known colour.
 *
 * <p>Differences are CIEDE2000. The white patch itself is left out of the means: it is what the
 * light is evened on.
 */
public final class ChartPhoto {
  private static final int COLUMNS = 6;
  private static final int PATCHES = 24;

  /** The white patch. */
  private static final int WHITE = 18;

  /** A patch is read in a square of this half side, as a share of the patches' distance. */
  private static final double HALF = 0.2;

  private final double[][] light;

  private ChartPhoto(double[][] light) {
    this.light = light;
  }

  /**
   * Mean and largest difference over the 23 patches that are not white.
   *
   * @param mean CIEDE2000
   * @param worst CIEDE2000
   */
  public record Difference(double mean, double worst) {}

  /**
   * Reads the patches of a photo.
   *
   * @param photo the photo
   * @param corners middles of the first and last patch of the first and of the last row, px: x, y
   *     of each
   * @return the chart
   */
  public static ChartPhoto of(RgbImage photo, int[] corners) {
    double[][] light = new double[PATCHES][];
    double half = HALF * Math.hypot(corners[2] - corners[0], corners[3] - corners[1]) / 5;
    for (int p = 0; p < PATCHES; p++) {
      double u = p % COLUMNS / 5.0;
      double v = Math.floorDiv(p, COLUMNS) / 3.0;
      double[] at = new double[2];
      for (int k = 0; k < 2; k++) {
        at[k] =
            (1 - v) * ((1 - u) * corners[k] + u * corners[2 + k])
                + v * ((1 - u) * corners[4 + k] + u * corners[6 + k]);
      }
      light[p] = median(photo, at, (int) Math.round(half));
    }
    return new ChartPhoto(light);
  }

  private static double[] median(RgbImage photo, double[] at, int half) {
    int side = 2 * half + 1;
    double[] median = new double[3];
    for (int c = 0; c < 3; c++) {
      double[] values = new double[side * side];
      for (int k = 0; k < values.length; k++) {
        int x = (int) Math.round(at[0]) + k % side - half;
        int y = (int) Math.round(at[1]) + Math.floorDiv(k, side) - half;
        values[k] = Srgb.linear(photo.rgb()[3 * (y * photo.width() + x) + c]);
      }
      Arrays.sort(values);
      median[c] = values[values.length / 2];
    }
    return median;
  }

  /**
   * Compares the photo's colours as they are.
   *
   * @param truth linear sRGB of the 24 patches
   * @return the differences
   */
  public Difference asTaken(double[][] truth) {
    return compare(truth, new double[] {1, 1, 1});
  }

  /**
   * Compares the colours with the white patch evened to its own colour.
   *
   * @param truth linear sRGB of the 24 patches
   * @return the differences
   */
  public Difference onWhite(double[][] truth) {
    double[] gains = new double[3];
    for (int c = 0; c < 3; c++) {
      gains[c] = truth[WHITE][c] / light[WHITE][c];
    }
    return compare(truth, gains);
  }

  private Difference compare(double[][] truth, double[] gains) {
    double sum = 0;
    double worst = 0;
    for (int p = 0; p < PATCHES; p++) {
      if (p != WHITE) {
        double[] seen = light[p];
        Cielab lab = Cielab.ofLinear(gains[0] * seen[0], gains[1] * seen[1], gains[2] * seen[2]);
        Cielab should = Cielab.ofLinear(truth[p][0], truth[p][1], truth[p][2]);
        double off = ColourDifference.ciede2000(lab, should);
        sum += off;
        worst = Math.max(worst, off);
      }
    }
    return new Difference(sum / (PATCHES - 1), worst);
  }
}
