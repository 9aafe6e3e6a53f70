// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Plugs as vivid as leaf: what cannot be told is held, for 0 and a plant's area would be wrong. */
class GreenPlugTest {
  /** Fresh moss, sRGB 60, 90, 40 in linear light (IEC 61966-2-1): u + v is 1.9, as of leaf. */
  private static final double[] FRESH_MOSS = {0.045, 0.102, 0.021};

  private static final double[][] HOLES = {{80, 80}, {220, 80}, {80, 220}, {220, 220}};

  /** Fills so many holes with moss. */
  private static Plants mossy(int holes) {
    Plants plants = Plants.on(0.75);
    for (int i = 0; i < holes; i++) {
      plants.disc(HOLES[i][0], HOLES[i][1], 23, FRESH_MOSS);
    }
    return plants;
  }

  private static Canopy canopy(Plants plants) {
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    return SegmentCanopy.on(deck, Plants.LAYOUT, light, place -> LeafModel.GREEN_LEAF);
  }

  private static String plugLike(Canopy canopy) {
    StringBuilder sites = new StringBuilder();
    for (int s = 0; s < 4; s++) {
      sites.append(canopy.isPlugLike(s) ? '?' : '.');
    }
    return sites.toString();
  }

  @Test
  void mossInAllHolesIsNoCanopyAndNoDoubt() {
    Canopy canopy = canopy(mossy(4));
    assertEquals("....", plugLike(canopy));
    int leaf = 0;
    for (byte c : canopy.coverage()) {
      leaf += c & 0xff;
    }
    assertEquals(0, leaf);
  }

  @Test
  void plantsOnMossInAllHolesAreHeldAndNotCalledEmpty() {
    Plants plants = mossy(4);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 9, Plants.LETTUCE);
    }
    assertEquals("????", plugLike(canopy(plants)));
  }

  @Test
  void threePlainDiscsOfOneSizeAreHeldAndNotCalledPlants() {
    Plants plants = mossy(3);
    plants.disc(205, 220, 12, Plants.LETTUCE).disc(232, 212, 12, Plants.LETTUCE);
    assertEquals("???.", plugLike(canopy(plants)));
  }
}
