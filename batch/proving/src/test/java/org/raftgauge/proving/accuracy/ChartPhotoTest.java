// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

class ChartPhotoTest {
  private static final int CELL = 20;
  private static final int WIDTH = 6 * CELL;
  private static final int[] CORNERS = {10, 10, 110, 10, 10, 70, 110, 70};

  /** A chart of random colours, its last row grey from white on. */
  private static double[][] truth() {
    Random random = new Random(5);
    double[][] truth = new double[24][];
    for (int p = 0; p < 24; p++) {
      double grey = 0.85 - 0.16 * (p - 18);
      truth[p] =
          p < 18
              ? new double[] {random.nextDouble(), random.nextDouble(), random.nextDouble()}
              : new double[] {grey, grey, grey};
    }
    return truth;
  }

  private static RgbImage photo(double[][] truth, double[] lamp) {
    byte[] rgb = new byte[3 * WIDTH * 4 * CELL];
    for (int i = 0; i < rgb.length; i++) {
      int x = Math.floorDiv(i, 3) % WIDTH;
      int y = Math.floorDiv(Math.floorDiv(i, 3), WIDTH);
      double light = truth[6 * Math.floorDiv(y, CELL) + Math.floorDiv(x, CELL)][i % 3];
      rgb[i] = (byte) Math.round(255 * Srgb.coded(light * lamp[i % 3]));
    }
    return RgbImage.of(WIDTH, 4 * CELL, rgb);
  }

  @Test
  void aLampsTintIsTakenOutOnTheWhitePatch() {
    double[][] truth = truth();
    ChartPhoto chart = ChartPhoto.of(photo(truth, new double[] {0.9, 0.75, 0.5}), CORNERS);
    assertTrue(chart.asTaken(truth).mean() > 5, "a tint that anyone would see");
    // Exact but for the rounding to 8-bit codes, half a step of which is under 0.5 of CIELAB.
    assertEquals(0, chart.onWhite(truth).mean(), 0.5);
  }

  @Test
  void aPatchOfAnotherColourIsTheWorst() {
    double[][] truth = truth();
    ChartPhoto chart = ChartPhoto.of(photo(truth, new double[] {1, 1, 1}), CORNERS);
    truth[20] = new double[] {0.9, 0.1, 0.1};
    assertTrue(chart.onWhite(truth).worst() > 20, "grey for red");
    assertTrue(chart.onWhite(truth).mean() < 4, "one of 23");
  }
}
