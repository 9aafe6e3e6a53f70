// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/**
 * Canopy of drawn decks whose exact areas are known: one millimetre a pixel unless said, blurred by
 * a pixel, two codes of noise.
 */
class SegmentCanopyTest {
  private static final double[] BOARDS = {0.75, 0.2, 0.02};

  @Test
  void aDiscAtAnySubPixelPlaceOnWhiteGreyAndBlackIsRightToOnePercent() {
    double[][] shifts = {{0, 0}, {0.5, 0.5}, {0.25, 0.75}, {0.37, 0.11}};
    for (double board : BOARDS) {
      for (double[] shift : shifts) {
        double radius = 30 + 20 * shift[1];
        Plants plants = Plants.on(board).disc(80 + shift[0], 80 + shift[1], radius, Plants.LETTUCE);
        double area = areaCm2(deck().draw(plants));
        double truth = Math.PI * radius * radius / 100;
        assertEquals(1, area / truth, 0.01, "board " + board + " shift " + shift[0]);
      }
    }
  }

  @Test
  void aDarkLeafOnWhiteAndGreyIsRightToAboutOnePercent() {
    for (double board : new double[] {0.75, 0.2}) {
      double area = areaCm2(deck().draw(Plants.on(board).disc(80.3, 80.6, 40, Plants.DARK_LEAF)));
      assertEquals(1, area / (Math.PI * 16), 0.012, "board " + board);
    }
  }

  @Test
  void anEmptyBoardHasNoCanopyAtAll() {
    for (double board : new double[] {0.95, 0.75, 0.2, 0.05, 0.02}) {
      assertEquals(0, areaCm2(deck().draw(Plants.on(board))), "board " + board);
    }
  }

  @Test
  void aBoardFullOfLeafIsCanopyAllOver() {
    for (double[] leaf : new double[][] {Plants.LETTUCE, Plants.DARK_LEAF}) {
      Plants plants = Plants.on(0.75).disc(150, 150, 300, leaf);
      // Deep shade between the leaves, 0.5 % of the deck.
      for (int i = 0; i < 5; i++) {
        plants.disc(30 + 60 * i, 150, 6, 0.01, 0.012, 0.008);
      }
      DeckImage deck = deck().draw(plants);
      Canopy canopy = canopy(deck);
      double cover = areaCm2(deck) / (canopy.width() * canopy.height() / 100.0);
      assertTrue(cover > 0.98, "cover " + cover);
    }
  }

  @Test
  void halfTheMillimetresAPixelGiveTheSameArea() {
    Plants plants = Plants.on(0.75).disc(80, 80, 35, Plants.LETTUCE);
    double coarse = areaCm2(deck().draw(plants));
    double fine = areaCm2(new DrawnDeck(Plants.LAYOUT.board(), 0.5).blur(1).noise(2).draw(plants));
    // The outline is put to 0.15 px of 1 mm: 220 mm * 0.15 mm = 0.33 cm2 of 38.5.
    assertEquals(coarse, fine, 0.33);
  }

  @Test
  void warmCoolAndDimLightMeasureTheSame() {
    Plants plants = Plants.on(0.75).disc(80, 80, 40, Plants.LETTUCE);
    double plain = areaCm2(deck().draw(plants));
    double[][] lights = {{1, 0.75, 0.45}, {0.7, 0.9, 1}, {0.125, 0.125, 0.125}, {0.2, 0.15, 0.09}};
    for (double[] light : lights) {
      double area = areaCm2(deck().light(light).draw(plants));
      assertEquals(1, area / plain, 0.02, "light " + light[0] + " " + light[2]);
    }
  }

  @Test
  void aHardShadowAddsNoArea() {
    for (double board : new double[] {0.75, 0.2}) {
      assertEquals(0, areaCm2(deck().draw(Plants.on(board).shadow(150))), "board " + board);
      double plain = areaCm2(deck().draw(Plants.on(board).disc(80, 80, 40, Plants.LETTUCE)));
      double shaded =
          areaCm2(deck().draw(Plants.on(board).disc(80, 80, 40, Plants.LETTUCE).shadow(100)));
      // The shadow's edge crosses the leaf: leaf in shade must still be leaf, to 2 %.
      assertEquals(1, shaded / plain, 0.02, "board " + board);
    }
  }

  @Test
  void aPaleWaterFilmIsNoCanopy() {
    // "algae/wet foam" 150,158,120 against "raft white lit" 236,238,232 of the collected colours.
    Plants plants = Plants.on(0.84).disc(150, 150, 30, 0.305, 0.342, 0.188);
    assertEquals(0, areaCm2(deck().draw(plants)), 0.1);
  }

  @Test
  void lightWithoutGreenIsToldByItsStarvation() {
    Plants plants = Plants.on(0.75).disc(80, 80, 40, Plants.LETTUCE);
    double most = CanopyRule.defaults().starvedGreen();
    // Red-blue lamps: a white raft seen as 0.67, 0.117, 0.76 is the worked example of the
    // collected colours; its blue over green is ln(0.76 / 0.117) = 1.87.
    EvenedLight magenta = light(deck().light(0.67, 0.117, 0.76).draw(plants));
    assertTrue(magenta.greenStarvation() > most);
    for (double[] light : new double[][] {{1, 1, 1}, {1, 0.75, 0.45}, {0.7, 0.9, 1}}) {
      assertTrue(light(deck().light(light).draw(plants)).greenStarvation() < most);
    }
  }

  @Test
  void theLightIsEvenedOnTheBoardAndSaysItsColour() {
    EvenedLight light = light(deck().light(1, 0.75, 0.45).draw(Plants.on(0.9)));
    assertEquals(LightSource.BOARD, light.source());
    // ln(0.75 / 0.45) is the larger of the two balances.
    assertEquals(Math.log(0.75 / 0.45), light.cast(), 0.02);
    assertEquals(0.9 * 0.75, light.boardGreen(), 0.02);
    float[] gains = light.gainsAt(160, 160, 320, 320);
    // After it the board is 1 in each channel.
    assertEquals(1, gains[0] * 0.9, 0.03);
    assertEquals(1, gains[1] * 0.9 * 0.75, 0.03);
    assertEquals(1, gains[2] * 0.9 * 0.45, 0.03);
  }

  private static DrawnDeck deck() {
    return new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2);
  }

  private static EvenedLight light(DeckImage deck) {
    return SegmentCanopy.evenLight(deck, Plants.LAYOUT);
  }

  private static Canopy canopy(DeckImage deck) {
    return SegmentCanopy.on(deck, Plants.LAYOUT, light(deck), place -> LeafModel.GREEN_LEAF);
  }

  private static double areaCm2(DeckImage deck) {
    double sum = 0;
    for (byte c : canopy(deck).coverage()) {
      sum += c & 0xff;
    }
    return sum / 255 * deck.mmPerPx() * deck.mmPerPx() / 100;
  }
}
