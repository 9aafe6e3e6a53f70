// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Boards whose plugs mislead the rules, drawn flat: nothing like what the network was taught. */
class SecondReadingTest {
  private static final double[][] HOLES = {{80, 80}, {220, 80}, {80, 220}, {220, 220}};

  /** Moss, sRGB 93, 112, 48 in linear light (IEC 61966-2-1). */
  private static final double[] MOSS = {0.109, 0.162, 0.03};

  private static final double[] GREY = {0.14, 0.14, 0.135};

  private static BoardLook look(Plants plants) {
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    return BoardLook.at(deck, Plants.LAYOUT, light, place -> LeafModel.GREEN_LEAF);
  }

  /** Lays two leaves side by side over each hole. */
  private static Plants leaves(Plants plants, double radiusMm) {
    for (double[] hole : HOLES) {
      plants
          .disc(hole[0] - radiusMm, hole[1], radiusMm, Plants.LETTUCE)
          .disc(hole[0] + radiusMm, hole[1] + 2, radiusMm, Plants.LETTUCE);
    }
    return plants;
  }

  private static Plants mossy() {
    Plants plants = Plants.on(0.75).plugs(GREY);
    Random random = new Random(5);
    for (double[] hole : HOLES) {
      for (int k = 0; k < 24; k++) {
        double angle = 2 * Math.PI * random.nextDouble();
        double from = 17 * Math.sqrt(random.nextDouble());
        plants.disc(
            hole[0] + from * Math.cos(angle),
            hole[1] + from * Math.sin(angle),
            2 + 2 * random.nextDouble(),
            MOSS);
      }
    }
    return plants;
  }

  private static double areaCm2(LeafReading reading) {
    int px = 0;
    for (boolean leaf : reading.leaf()) {
      px += leaf ? 1 : 0;
    }
    return px / 100.0;
  }

  private static int weak(LeafReading reading) {
    int weak = 0;
    for (int i = 0; i < reading.leaf().length; i++) {
      weak += reading.isWeak(i, reading.leaf()[i]) ? 1 : 0;
    }
    return weak;
  }

  private static LeafReading doubted(BoardLook look) {
    LeafReading rules = LeafReading.of(look, HoleOdds.none());
    SecondReading.doubt(look, rules);
    return rules;
  }

  @Test
  void mossThatTheRulesTakeForLeafIsDoubted() {
    BoardLook look = look(leaves(mossy(), 5));
    int before = weak(LeafReading.of(look, HoleOdds.none()));
    LeafReading rules = doubted(look);
    // Eight discs of 5 mm: 6.3 cm2. The rules find more than three times as much.
    assertTrue(areaCm2(rules) > 19, areaCm2(rules) + " cm2");
    assertEquals(4, rules.plugLike().cardinality());
    // What one took for leaf and the other not is doubtful, whatever its colour says.
    assertTrue(weak(rules) > before + 1000, before + " and " + weak(rules) + " px");
  }

  @Test
  void whereBothAgreeNothingIsDoubted() {
    for (double radiusMm : new double[] {8, 11}) {
      BoardLook look = look(leaves(Plants.on(0.75), radiusMm));
      int before = weak(LeafReading.of(look, HoleOdds.none()));
      LeafReading rules = doubted(look);
      assertEquals(before, weak(rules));
      assertTrue(rules.plugLike().isEmpty());
      // Eight discs: 16.1 and 30.4 cm2.
      double cm2 = 8 * Math.PI * radiusMm * radiusMm / 100;
      assertEquals(cm2, areaCm2(rules), 0.1 * cm2);
    }
  }

  /** Covers three holes with plants of 137 cm2, seven times a hole of the layout. */
  private static Plants outgrown(Plants plants) {
    for (int i = 0; i < 3; i++) {
      plants.disc(HOLES[i][0], HOLES[i][1], 66, Plants.LETTUCE);
    }
    return plants;
  }

  /** Returns the leaf within the last hole. */
  private static double lastCm2(BoardLook look, LeafReading reading) {
    int[] px = {0};
    PointPx centre = look.deck().toPx(new PointMm(HOLES[3][0], HOLES[3][1]));
    HoleDisc.each(look.deck(), centre, 22, (i, off) -> px[0] += reading.leaf()[i] ? 1 : 0);
    return px[0] / 100.0;
  }

  @Test
  void whatAloneStaysInItsHoleIsDoubtedWhereTheOthersHaveOutgrownTheirs() {
    BoardLook look = look(outgrown(mossy()));
    LeafReading rules = doubted(look);
    assertTrue(lastCm2(look, rules) > 2, lastCm2(look, rules) + " cm2 of moss");
    assertEquals(BitSet.valueOf(new long[] {0b1000}), rules.plugLike());
  }

  @Test
  void aStuntedPlantAmongLargeOnesIsNotDoubted() {
    Plants plants = outgrown(Plants.on(0.75));
    plants.disc(212, 220, 8, Plants.LETTUCE).disc(228, 222, 8, Plants.LETTUCE);
    BoardLook look = look(plants);
    LeafReading rules = doubted(look);
    assertEquals(4.0, lastCm2(look, rules), 0.4);
    assertTrue(rules.plugLike().isEmpty());
  }

  @Test
  void aBoardWithoutLeafIsNotDoubted() {
    LeafReading rules = doubted(look(Plants.on(0.75).plugs(GREY)));
    assertEquals(0, areaCm2(rules));
    assertTrue(rules.plugLike().isEmpty());
  }
}
