// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Canopy on drawn ground. Bounds on covers are the demands on the method: under 0.5 % of bare soil
 * called leaf, over 95 % of a closed canopy.
 */
class OpenGroundTest {
  private static double cover(Canopy canopy) {
    double sum = 0;
    for (byte b : canopy.coverage()) {
      sum += (b & 0xff) / 255.0;
    }
    return sum;
  }

  private static DrawnGround plant() {
    return DrawnGround.soil(320, 240)
        .leaf(150, 110, 40, 18, 0.4)
        .leaf(190, 140, 35, 15, 1.9)
        .leaf(80, 180, 30, 9, 2.6);
  }

  @Test
  void leavesOnSoilAreFoundPixelByPixel() {
    DrawnGround drawn = plant();
    Canopy canopy = OpenGround.on(drawn.deck(0));
    double both = 0;
    double found = 0;
    for (int i = 0; i < canopy.coverage().length; i++) {
      boolean leaf = (canopy.coverage()[i] & 0xff) >= 128;
      found += leaf ? 1 : 0;
      both += leaf ? drawn.coverAt(i) : 0;
    }
    // A rim of half a pixel about leaves of 9 to 40 px is 4 % of their area.
    assertTrue(2 * both / (found + drawn.areaPx()) > 0.96, both + " of " + drawn.areaPx());
    assertEquals(drawn.areaPx(), cover(canopy), 0.05 * drawn.areaPx());
    assertEquals(LightSource.CAMERA, canopy.light().source());
    assertTrue(canopy.threshold() >= 3, "threshold " + canopy.threshold());
  }

  @Test
  void aMarginThatThePhotoLacksChangesNothing() {
    Canopy bare = OpenGround.on(plant().deck(0));
    Canopy wide = OpenGround.on(plant().deck(24));
    assertEquals(320 + 48, wide.width());
    for (int y = 0; y < bare.height(); y++) {
      for (int x = 0; x < bare.width(); x++) {
        assertEquals(
            bare.coverage()[y * bare.width() + x],
            wide.coverage()[(y + 24) * wide.width() + x + 24]);
      }
    }
    assertEquals(cover(bare), cover(wide), 1e-9);
  }

  @Test
  void bareSoilHoldsNoLeaf() {
    Canopy canopy = OpenGround.on(DrawnGround.soil(320, 240).deck(0));
    assertTrue(cover(canopy) < 0.005 * 320 * 240, "px: " + cover(canopy));
  }

  @Test
  void aClosedCanopyIsAllLeaf() {
    Canopy canopy = OpenGround.on(DrawnGround.closed(320, 240).deck(0));
    assertTrue(cover(canopy) > 0.95 * 320 * 240, "px: " + cover(canopy));
  }

  @Test
  void mossThatFadesOutIsNoLeaf() {
    DrawnGround drawn = DrawnGround.soil(320, 240);
    for (int n = 0; n < 12; n++) {
      drawn.moss(25 + 90 * (n % 4), 40 + 80 * Math.floorDiv(n, 4), 38);
    }
    Canopy canopy = OpenGround.on(drawn.deck(0));
    assertEquals(0, cover(canopy), 1e-9);
  }

  @Test
  void leavesAreFoundAmongMoss() {
    DrawnGround drawn =
        DrawnGround.soil(320, 240).moss(90, 90, 60).moss(240, 170, 50).leaf(100, 100, 35, 14, 1);
    Canopy canopy = OpenGround.on(drawn.deck(0));
    assertEquals(drawn.areaPx(), cover(canopy), 0.08 * drawn.areaPx());
  }

  @Test
  void aPictureOfOnePixelHoldsNoLeaf() {
    assertEquals(0, cover(OpenGround.on(DrawnGround.soil(1, 1).deck(0))));
  }
}
