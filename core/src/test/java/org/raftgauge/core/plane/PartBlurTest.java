// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;

/** Blur read off drawn stripes whose edges are Gaussian steps of the luma. */
class PartBlurTest {
  private static final int SIDE = 600;
  private static final int PART = SIDE / EdgeBlur.CELLS;

  /** Stripes 24 px wide, turned, their edges as wide as asked for, under noise. */
  private static RgbImage stripes(double turnDeg, double noise, DoubleBinaryOperator sigmaAt) {
    Random random = new Random(3);
    double c = Math.cos(Math.toRadians(turnDeg));
    double s = Math.sin(Math.toRadians(turnDeg));
    byte[] rgb = new byte[3 * SIDE * SIDE];
    for (int i = 0; i < SIDE * SIDE; i++) {
      int x = i % SIDE;
      int y = Math.floorDiv(i, SIDE);
      double across = c * x + s * y + 7.3;
      double from = 12 - Math.abs(across - 24 * Math.floor(across / 24) - 12);
      boolean dark = Math.floorMod((long) Math.floor(across / 24), 2L) == 0;
      double edge = normal(from / sigmaAt.applyAsDouble(x, y));
      double level = 40 + 150 * (dark ? 1 - edge : edge) + noise * random.nextGaussian();
      byte value = (byte) Math.round(level);
      rgb[3 * i] = value;
      rgb[3 * i + 1] = value;
      rgb[3 * i + 2] = value;
    }
    return RgbImage.of(SIDE, SIDE, rgb);
  }

  private static double normal(double z) {
    return 0.5 * (1 + Erf.erf(z / Math.sqrt(2)));
  }

  private static double mean(List<OptionalDouble> parts) {
    return parts.stream().mapToDouble(OptionalDouble::getAsDouble).average().orElseThrow();
  }

  @Test
  void blurIsThatOfTheEdgesDrawnWhicheverWayTheyRun() {
    for (double turn : new double[] {0, 30, 45, 70, 90}) {
      for (double sigma : new double[] {1, 2, 3}) {
        double found = mean(PartBlur.of(stripes(turn, 0, (x, y) -> sigma)));
        // The slope is read over two pixels, least where the edge lies midway between two: from the
        // normal distribution's integral. Bins of 4 %.
        double rise = normal(1.5 / sigma) - normal(-0.5 / sigma);
        double most = 2 / rise / Math.sqrt(2 * Math.PI);
        assertTrue(found > 0.96 * sigma && found < 1.04 * most, turn + ", " + sigma + ": " + found);
      }
    }
  }

  @Test
  void noiseOfACameraMovesItLittle() {
    double clean = mean(PartBlur.of(stripes(20, 0, (x, y) -> 1.5)));
    double noisy = mean(PartBlur.of(stripes(20, 3, (x, y) -> 1.5)));
    // The quartile of noisy slopes lies on their sharp side.
    assertEquals(1, noisy / clean, 0.15);
  }

  @Test
  void smearShowsInItsPartsAlone() {
    List<OptionalDouble> parts =
        PartBlur.of(stripes(35, 2, (x, y) -> Math.hypot(x - 330, y - 210) < 100 ? 4 : 1));
    double within = parts.get(EdgeBlur.CELLS * (210 / PART) + 330 / PART).getAsDouble();
    double beyond = parts.get(EdgeBlur.CELLS * 8 + 1).getAsDouble();
    assertTrue(within > 2.5 * beyond, within + " against " + beyond);
  }

  @Test
  void emptyPictureAndTinyPictureTellNothing() {
    List<OptionalDouble> none =
        IntStream.range(0, EdgeBlur.CELLS * EdgeBlur.CELLS)
            .mapToObj(i -> OptionalDouble.empty())
            .toList();
    assertEquals(none, PartBlur.of(RgbImage.of(300, 200, new byte[3 * 300 * 200])));
    assertEquals(none, PartBlur.of(RgbImage.of(1, 1, new byte[3])));
  }
}
