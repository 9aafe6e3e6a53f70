// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Plugs of which one lies in the sun, which is five times as bright as the shade. */
class HoleLightTest {
  /** Dry coir, sRGB 108, 84, 56, in linear light (IEC 61966-2-1). */
  private static final double[] COIR = {0.150, 0.089, 0.040};

  /** The sun shines on a square about the first of the four holes. */
  private static final double SUNNY_MM = 145;

  private static DeckImage deck(DrawnDeck.Look look) {
    return new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(look);
  }

  private static DrawnDeck.Look sunny(Plants plants) {
    return (x, y, rgb) -> {
      plants.at(x, y, rgb);
      for (int c = 0; c < 3; c++) {
        rgb[c] *= x < SUNNY_MM && y < SUNNY_MM ? 1 : 0.2;
      }
    };
  }

  private static float[][] light(DeckImage deck) {
    return EvenedPixels.planes(deck.image().rgb(), EvenedPixels.linear(0));
  }

  private static double atHole(DeckImage deck, float[][] light, int hole) {
    SiteId site = Plants.LAYOUT.grid().sites().get(hole);
    PointPx c = deck.toPx(Plants.LAYOUT.grid().centre(site));
    double sum = 0;
    for (int k = 0; k < 100; k++) {
      int x = (int) c.xPx() - 5 + k % 10;
      sum += light[1][((int) c.yPx() - 5 + Math.floorDiv(k, 10)) * deck.image().width() + x];
    }
    return sum / 100;
  }

  @Test
  void aPlugInTheSunIsShownInTheLightOfTheOthers() {
    DeckImage deck = deck(sunny(Plants.on(0.75).plugs(COIR)));
    float[][] given = light(deck);
    float[][] level = HoleLight.level(deck, Plants.LAYOUT, given, new float[given[0].length]);
    assertEquals(5, atHole(deck, given, 0) / atHole(deck, given, 3), 0.5, "as it was drawn");
    assertEquals(1, atHole(deck, level, 0) / atHole(deck, level, 3), 0.1);
    for (int hole = 1; hole < 4; hole++) {
      assertEquals(atHole(deck, given, hole), atHole(deck, level, hole), "the usual light");
    }
  }

  @Test
  void evenLightIsLeftAsItIs() {
    DeckImage deck = deck(Plants.on(0.75).plugs(COIR));
    float[][] given = light(deck);
    assertSame(given, HoleLight.level(deck, Plants.LAYOUT, given, new float[given[0].length]));
  }
}
