// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Dead leaf on drawn decks whose exact areas are known: a millimetre a pixel, blurred, noisy. */
class DeadLeafTest {
  /** A dry leaf, sRGB 138, 106, 60 made linear (chosen by eye). */
  private static final double[] DRY = {0.254, 0.144, 0.045};

  private static final double[] BOARDS = {0.75, 0.2, 0.05};

  @Test
  void aBrownPlantOnItsHoleIsMeasuredToTwoPercent() {
    for (double board : BOARDS) {
      double area = areaCm2(Plants.on(board).disc(80.3, 80.6, 32, DRY));
      assertEquals(1, area / (Math.PI * 10.24), 0.02, "board " + board);
    }
  }

  @Test
  void aDryOuterLeafCountsWithItsLivingPlant() {
    // A disc of 20 mm whose middle lies on the rim of one of 40 mm: the lens they share is
    // r^2 acos(d^2 + r^2 - R^2 / 2dr) + R^2 acos(d^2 + R^2 - r^2 / 2dR) - half the kite's root.
    double lens =
        400 * Math.acos(0.25) + 1600 * Math.acos(0.875) - 0.5 * Math.sqrt(20 * 60 * 20 * 100);
    double truth = (Math.PI * (1600 + 400) - lens) / 100;
    double area = areaCm2(Plants.on(0.75).disc(120, 80, 20, DRY).disc(80, 80, 40, Plants.LETTUCE));
    assertEquals(1, area / truth, 0.02);
  }

  @Test
  void aBrownPlugIsNoPlant() {
    // Coir, sRGB 74, 53, 38 made linear (chosen by eye), and one as bright as dry leaf.
    for (double[] plug : new double[][] {{0.069, 0.036, 0.019}, DRY}) {
      assertEquals(0, areaCm2(Plants.on(0.75).plugs(plug)));
    }
  }

  @Test
  void brightSpecksOfBrownPlugsAreNoPlantsAndAWitheredOneIsTold() {
    // Burnt clay, sRGB 151, 88, 58, made linear (chosen by eye), and a shard in better light.
    double[] clay = {0.309, 0.098, 0.042};
    Plants plants = Plants.on(0.75).plugs(clay);
    for (double[] at : new double[][] {{80, 80}, {220, 80}, {80, 220}, {220, 220}}) {
      plants.disc(at[0] + 8, at[1] + 5, 5, 1.8 * clay[0], 1.8 * clay[1], 1.8 * clay[2]);
    }
    double shards = areaCm2(plants);
    // The shards and their blurred rims may pass for leaf, the plugs about them must not.
    assertTrue(shards < 6, shards + " cm2, where shards are 3.1 and plugs 50 to 60");
    plants.disc(75, 80, 32, 1.9 * DRY[0], 1.9 * DRY[1], 1.9 * DRY[2]);
    double withered = areaCm2(plants) - 0.75 * shards;
    assertEquals(1, withered / (Math.PI * 10.24), 0.05);
  }

  @Test
  void aDryPlugInTheOnlyOpenHoleIsNoPlant() {
    for (double radius : new double[] {10, 14, 17}) {
      assertEquals(0, areaCm2(Plants.on(0.75).disc(80, 80, radius, DRY)), "radius " + radius);
    }
  }

  @Test
  void aDryPlugUnderALeafIsNoPlant() {
    for (double over : new double[] {8, 16, 24}) {
      Plants plants =
          Plants.on(0.75).disc(80, 80, 17, DRY).disc(80 + 17 + 40 - over, 80, 40, Plants.LETTUCE);
      assertEquals(1, areaCm2(plants) / (16 * Math.PI), 0.02, over + " mm over the plug");
    }
  }

  @Test
  void aDeadRosetteThatHardlyLeavesItsHoleIsMeasuredToTenPercent() {
    // Five leaves of 8 mm, 12 mm from a middle of 10: counted on a grid of 0.1 mm.
    Plants plants = Plants.on(0.75).disc(80, 80, 10, DRY);
    for (int leaf = 0; leaf < 5; leaf++) {
      double turn = 2 * Math.PI * leaf / 5;
      plants.disc(80 + 12 * Math.cos(turn), 80 + 12 * Math.sin(turn), 8, DRY);
    }
    assertEquals(1, areaCm2(plants) / rosetteCm2(), 0.1);
  }

  private static double rosetteCm2() {
    int inside = 0;
    for (int y = -250; y <= 250; y++) {
      for (int x = -250; x <= 250; x++) {
        boolean any = Math.hypot(x, y) < 100;
        for (int leaf = 0; leaf < 5; leaf++) {
          double turn = 2 * Math.PI * leaf / 5;
          any |= Math.hypot(x - 120 * Math.cos(turn), y - 120 * Math.sin(turn)) < 80;
        }
        inside += any ? 1 : 0;
      }
    }
    return inside / 1e4;
  }

  @Test
  void aDeadSeedlingInItsHoleIsMeasuredToTwelvePercent() {
    // Two seed leaves 6 mm in radius whose middles are 11 mm apart overlap by the lens of
    // 2 r^2 acos(d / 2r) - d / 2 sqrt(4 r^2 - d^2); a rim of 70 mm is put to 0.3 px.
    double lens = 72 * Math.acos(11 / 12.0) - 5.5 * Math.sqrt(144 - 121);
    double truth = (72 * Math.PI - lens) / 100;
    Plants plants = Plants.on(0.75).disc(75, 80, 6, DRY).disc(86, 80, 6, DRY);
    assertEquals(1, areaCm2(plants) / truth, 0.12);
  }

  @Test
  void brownThatHangsOnNoPlantIsNone() {
    assertEquals(0, areaCm2(Plants.on(0.75).disc(150, 150, 30, DRY)));
  }

  @Test
  void aStainThatFadesOutAboutAHoleIsNoPlant() {
    Plants plants = Plants.on(0.75);
    for (int r = 60; r > 20; r--) {
      double share = (60 - r) / 40.0;
      double[] stain = new double[3];
      for (int c = 0; c < 3; c++) {
        stain[c] = 0.75 + share * (DRY[c] - 0.75);
      }
      plants.disc(80, 80, r, stain);
    }
    assertEquals(0, areaCm2(plants.disc(80, 80, 20, 0.02, 0.02, 0.02)));
  }

  @Test
  void livingLeafBoardAndShadeAreNotBrown() {
    assertEquals(0, DeadLeaf.brown(0.117, 0.296, 0.034)); // lettuce
    assertEquals(0, DeadLeaf.brown(0.75, 0.75, 0.75)); // board
    assertEquals(0, DeadLeaf.brown(0.02, 0.018, 0.012)); // water
    assertEquals(0, DeadLeaf.brown(0.871, 0.645, 0.045)); // a yellow card
    // ln((0.254 + 0.012) / (0.045 + 0.012))
    assertEquals(1.540, DeadLeaf.brown(0.254, 0.144, 0.045), 1e-3);
    assertTrue(DeadLeaf.brown(0.076, 0.043, 0.0135) > 0.75); // in shade
  }

  private static double areaCm2(Plants plants) {
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    Canopy canopy = SegmentCanopy.on(deck, Plants.LAYOUT, light, p -> LeafModel.GREEN_LEAF);
    double sum = 0;
    for (byte c : canopy.coverage()) {
      sum += c & 0xff;
    }
    return sum / 25500;
  }
}
