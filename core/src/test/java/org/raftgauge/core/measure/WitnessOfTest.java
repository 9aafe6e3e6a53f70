// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.EdgeBlur;
import org.raftgauge.core.station.StationSign;

/** Haze over photos of flat parts: a board of one light and, in one part of twenty, its holes. */
class WitnessOfTest {
  private static final double USUAL = 0.01;

  @Test
  void hazeIsTheLightOfTheDarkestAsAShareOfWhite() {
    assertEquals(0.3 / 0.8, haze(0.8, 0.3), 0.01);
    assertEquals(0.02 / 0.8, haze(0.8, 0.02), 0.01);
  }

  /** Lights of a rendered photo of black boards in clear air, 22 May of seed 771903. */
  @Test
  void holesInADarkBoardAreNoHaze() {
    double haze = haze(0.06, 0.022);
    assertEquals(0.022 / 0.15, haze, 0.01);
    assertEquals(false, StationSign.HAZE.holds(haze, USUAL));
    assertEquals(true, StationSign.HAZE.holds(haze(0.8, 0.3), USUAL));
  }

  private static double haze(double board, double holes) {
    int side = 200;
    byte[] rgb = new byte[3 * side * side];
    for (int i = 0; i < rgb.length; i++) {
      double light = i < rgb.length / 20 ? holes : board;
      rgb[i] = (byte) Math.round(255 * Srgb.coded(light));
    }
    RgbImage image = RgbImage.of(side, side, rgb);
    WitnessOf.Boards none =
        new WitnessOf.Boards(EdgeBlur.of(image, List.of()), List.of(), List.of());
    return WitnessOf.photo(image, none, Optional.empty()).hazeFraction().getAsDouble();
  }
}
