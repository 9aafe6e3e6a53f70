// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class FittedCircleTest {

  @Test
  void placesOnACircleAreOffItByNothing() {
    assertEquals(0, rim(0, 0, 360).unevenness(), 1e-6);
  }

  @Test
  void aThirdOfACircleIsEnough() {
    assertEquals(0, rim(0, 10, 120).unevenness(), 1e-5);
  }

  /** A wave of height h all round has a root mean square of h / sqrt(2). */
  @Test
  void aWavyRimIsOffByItsWave() {
    assertEquals(2 / Math.sqrt(2) / 20, rim(2, 0, 360).unevenness(), 0.003);
  }

  @Test
  void aLineAndFewPlacesLieOnNoCircle() {
    FittedCircle line = new FittedCircle();
    for (int i = 0; i < 9; i++) {
      line.add(3 * i, 2 * i);
    }
    assertTrue(Double.isInfinite(line.unevenness()));
    assertTrue(Double.isInfinite(new FittedCircle().unevenness()));
  }

  /** Places about (900, 1200) at 20 px, with a wave of six crests. */
  private static FittedCircle rim(double wave, int fromDeg, int toDeg) {
    FittedCircle circle = new FittedCircle();
    for (int deg = fromDeg; deg < toDeg; deg++) {
      double turn = Math.toRadians(deg);
      double r = 20 + wave * Math.sin(6 * turn);
      circle.add(900 + r * Math.cos(turn), 1200 + r * Math.sin(turn));
    }
    return circle;
  }
}
