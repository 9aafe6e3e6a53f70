// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.canopy.ColourTerms;
import org.raftgauge.core.canopy.TaughtRule;
import org.raftgauge.core.pixels.Srgb;

/** The taught colour models that come with the program. */
class ShippedColoursTest {

  private static double leaf(String name, int rgb) {
    TaughtColour model = ShippedColours.taught().get(name).orElseThrow();
    float[] linear = new float[3];
    for (int c = 0; c < 3; c++) {
      linear[c] = Srgb.linear((byte) (rgb >> (16 - 8 * c)));
    }
    return new TaughtRule(model).leaf(ColourTerms.coordinates(linear));
  }

  @Test
  void eachTellsItsLeafFromBoardAndShade() {
    // Leaf: sRGB of the renderer's tones (plant/Tone): green and red lettuce. Shade: a fifth of
    // white's light, sRGB 0x7c (IEC 61966-2-1).
    assertTrue(leaf("green-leaf-taught", 0x6f9433) > 0.9);
    assertTrue(leaf("green-leaf-taught", 0x47752c) > 0.9);
    assertTrue(leaf("red-leaf-taught", 0x5e2a2e) > 0.9);
    assertTrue(leaf("red-leaf-taught", 0x4d2a3e) > 0.9);
    for (String name : ShippedColours.TAUGHT) {
      assertTrue(leaf(name, 0xffffff) < 0.1, name);
      assertTrue(leaf(name, 0x7c7c7c) < 0.1, name);
    }
  }

  @Test
  void noBookMayHaveAModelOfTheirNames() {
    assertTrue(ShippedColours.has("red-leaf"));
    assertTrue(ShippedColours.has("green-leaf-taught"));
    assertFalse(ShippedColours.has("basil-taught"));
    assertEquals(List.copyOf(ShippedColours.taught().keySet()), ShippedColours.TAUGHT);
  }
}
