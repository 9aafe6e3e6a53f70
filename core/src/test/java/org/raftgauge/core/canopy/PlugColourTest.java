// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Plants on boards whose plugs have a colour that could pass for leaf. */
class PlugColourTest {
  /**
   * Mossy foam, sRGB 61, 74, 54 and brown coir, sRGB 74, 53, 38, in linear light (IEC 61966-2-1).
   */
  private static final double[] MOSS = {0.047, 0.069, 0.037};

  private static final double[] COIR = {0.069, 0.036, 0.019};
  private static final double[] PURPLE = {0.085, 0.035, 0.065};

  private static final double[] NEAR_BLACK = {0.012, 0.011, 0.010};

  /** Scores 0.58 as red leaf, under the threshold of 0.75. */
  private static final double[] DULL_RED = {0.060, 0.034, 0.031};

  /** Middles of the four holes, mm. */
  private static final double[][] HOLES = {{80, 80}, {220, 80}, {80, 220}, {220, 220}};

  @Test
  void emptyPlugsOfMossOrCoirAreNoCanopy() {
    for (double[] plug : new double[][] {MOSS, COIR}) {
      for (LeafModel model : List.of(LeafModel.GREEN_LEAF, LeafModel.RED_LEAF)) {
        DeckImage deck = deck(Plants.on(0.75).plugs(plug));
        // The limit is 2 cm2 a site; a hole is 12.6.
        assertEquals(0, areaCm2(deck, model), 0.5, model.bookName() + " " + plug[0]);
      }
    }
  }

  @Test
  void aSeedlingOnMossIsMeasuredWithoutThePlug() {
    for (double board : new double[] {0.75, 0.2}) {
      Plants plants = Plants.on(board).plugs(MOSS);
      for (double[] at : HOLES) {
        plants.disc(at[0], at[1], 10, Plants.LETTUCE);
      }
      double truth = 4 * Math.PI; // four discs of 10 mm
      double area = areaCm2(deck(plants), LeafModel.GREEN_LEAF);
      // The outline is put to 0.2 px: 0.2 of 10 mm, twice, is 4 %.
      assertEquals(1, area / truth, 0.04, "board " + board);
    }
  }

  @Test
  void aPurpleSeedlingOnCoirIsMeasuredWithoutThePlug() {
    Plants plants = Plants.on(0.75).plugs(COIR);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 11, PURPLE);
    }
    double truth = 4 * Math.PI * 1.21;
    // Leaf and coir are both dark: 0.35 px of 11 mm.
    assertEquals(1, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.065);
  }

  @Test
  void purpleLeafAboutEveryRimIsNotTakenForThePlug() {
    // Purple at the rims and none in the middle is what a plug looks like; its colour is none's.
    Plants plants = Plants.on(0.75).plugs(NEAR_BLACK);
    for (double[] at : HOLES) {
      for (int k = 0; k < 4; k++) {
        double x = at[0] + 13 * Math.cos(Math.PI / 2 * k);
        plants.disc(x, at[1] + 13 * Math.sin(Math.PI / 2 * k), 6, PURPLE);
      }
    }
    // Four discs of 6 mm a hole. Small dark leaf over black is found up to 0.75 pixels too wide,
    // 26 %; as a plug it would not be found at all.
    double truth = 16 * Math.PI * 0.36;
    assertEquals(1.13, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.13);
  }

  @Test
  void redLeafAboutGreenHeartsOverGreyPlugsIsNotTakenForThePlug() {
    // The rims of young red leaf are commoner near the hole's rim than in its middle, as plugs are;
    // but the plugs are seen beside them, as bright and grey.
    Plants plants = Plants.on(0.75).plugs(0.15, 0.15, 0.14);
    for (double[] at : HOLES) {
      plants.disc(at[0] - 13, at[1], 5, 0.17, 0.07, 0.065);
      plants.disc(at[0] + 13, at[1], 5, 0.17, 0.07, 0.065);
      plants.disc(at[0], at[1], 8, 0.23, 0.17, 0.07);
    }
    // Two discs of 5 mm that touch one of 8 mm; taken for the plug, the two would be 44 % of it.
    double truth = 4 * Math.PI * 1.14;
    assertEquals(1, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.06);
  }

  @Test
  void aLonePlugOfCoirAmongGreyOnesIsNoLeaf() {
    // One hole of four has brown coir, four fifths of it open; grey plugs show in the others only.
    Plants plants = Plants.on(0.75).plugs(0.15, 0.15, 0.14);
    plants.disc(HOLES[0][0], HOLES[0][1], 20, COIR);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 11, PURPLE);
    }
    double truth = 4 * Math.PI * 1.21;
    // Were the coir taken for leaf, it would be 1.5 times as much.
    assertEquals(1, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.03);
  }

  @Test
  void theBlendOfCoirAndItsGreyCollarIsNoLeaf() {
    // Coir of 16 mm in grey collars: where they blend is dim brown, which scores as little as coir.
    Plants plants = Plants.on(0.75).plugs(0.15, 0.15, 0.14);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 16, COIR);
      plants.disc(at[0], at[1], 11, PURPLE);
    }
    double truth = 4 * Math.PI * 1.21;
    // Were the blend taken for leaf, it would be 1.37 times as much.
    assertEquals(1, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.03);
  }

  @Test
  void paleLeavesAboutVividHeartsAreNotTakenForThePlug() {
    // Sallow leaves, u + v of 1.1 about hearts of 1.6, a little duller than green leaf is: commoner
    // near the rim than in the middle and nowhere beside the holes, as plugs are; but as bright.
    double[] pale = {0.27, 0.32, 0.11};
    double[] heart = {0.30, 0.40, 0.10};
    Plants plants = Plants.on(0.75).plugs(NEAR_BLACK);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 16, pale);
      plants.disc(at[0], at[1], 9, heart);
    }
    double truth = 4 * Math.PI * 2.56;
    assertEquals(1, areaCm2(deck(plants), LeafModel.GREEN_LEAF) / truth, 0.025);
  }

  @Test
  void dullRedLeafOverANearBlackPlugIsToldByItsLight() {
    Plants plants = Plants.on(0.75).plugs(NEAR_BLACK);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 8, DULL_RED);
      plants.disc(at[0], at[1], 5, PURPLE);
    }
    // Exact to half a pixel of the rim, 13 %; without its rims it would be 39 %.
    double truth = 4 * Math.PI * 0.64;
    assertEquals(1, areaCm2(deck(plants), LeafModel.RED_LEAF) / truth, 0.13);
  }

  @Test
  void dullPatchOfABarePlugIsNoLeaf() {
    Plants plants = Plants.on(0.75).plugs(NEAR_BLACK);
    plants.disc(HOLES[0][0], HOLES[0][1], 8, DULL_RED);
    assertEquals(0, areaCm2(deck(plants), LeafModel.RED_LEAF), 0.05);
  }

  @Test
  void leafOfThePlugsColourThatReachesBeyondTheHolesIsKept() {
    Plants plants = Plants.on(0.75).plugs(MOSS);
    for (double[] at : HOLES) {
      plants.disc(at[0], at[1], 40, Plants.DARK_LEAF);
    }
    double truth = 4 * Math.PI * 16;
    assertEquals(1, areaCm2(deck(plants), LeafModel.GREEN_LEAF) / truth, 0.01);
  }

  @Test
  void plugsOfTwoEmptyHolesBesideVividPlantsAreNoCanopy() {
    // Dark green foam, sRGB 52, 80, 55 made linear: as common in the middle as near the rim.
    double[] foam = {0.034, 0.080, 0.038};
    Plants plants = Plants.on(0.75).plugs(foam);
    for (double[] at : new double[][] {HOLES[0], HOLES[3]}) {
      plants.disc(at[0], at[1], 40, Plants.LETTUCE);
    }
    double truth = 2 * Math.PI * 16;
    assertEquals(1, areaCm2(deck(plants), LeafModel.GREEN_LEAF) / truth, 0.01);
  }

  @Test
  void aPlugsLineEndsAtItsEndAndAtItsBrightness() {
    // Along u = v: ln((G + 0.012) / (R + 0.012)) = 0.4 is G + 0.012 = 1.492 (R + 0.012).
    PlugColour plug = new PlugColour(Math.sqrt(0.5), Math.sqrt(0.5), 0.8, 0.1, 0.1);
    double green = 1.492 * 0.052 - 0.012;
    assertTrue(plug.shows(0.04, green, 0.04), "0.57 along, 0 beside");
    assertEquals(0, plug.distance(0.04, green, 0.04), 1e-3);
    assertTrue(!plug.shows(0.4, 1.492 * 0.412 - 0.012, 0.4), "too bright");
    assertTrue(!plug.shows(0.01, 2.2 * 0.022 - 0.012, 0.01), "1.12 along, past the end");
    assertTrue(!plug.shows(0.02, 0.04, 0.06), "beside the line");
    // u = 0.485, v = -0.325: 0.113 along, 0.573 beside.
    assertEquals(0.573, plug.distance(0.02, 0.04, 0.06), 2e-3);
  }

  @Test
  void shelteredGroundBesideALeafIsNoPartOfIt() {
    // A leaf's foot shades the board by a third, fading out over 6 mm; worth 1.9 % of the area if
    // a quarter of it were taken for leaf over the 2 px band.
    Plants plants = Plants.on(0.75).disc(150, 150, 40, Plants.LETTUCE).shelter(0.33);
    assertEquals(1, areaCm2(deck(plants), LeafModel.GREEN_LEAF) / (16 * Math.PI), 0.012);
  }

  @Test
  void leafManyTimesBrighterThanADarkBoardKeepsItsGreen() {
    // Yellow leaf, sRGB 190, 200, 100 in linear light, four times as bright as its board: on the
    // table's scale all of its channels but blue would be cut off.
    Plants plants = Plants.on(0.2).disc(150, 150, 40, 0.515, 0.578, 0.127);
    assertEquals(1, areaCm2(deck(plants), LeafModel.GREEN_LEAF) / (16 * Math.PI), 0.01);
  }

  @Test
  void rimsOfAnyBrightnessAreNotThePlugButAShadedPlugIs() {
    // About hearts of 9 mm the dull colour of a plug: once as leaves' rims mixed with the dark of
    // the hole, 0.03 to 0.33 of full light, once as a plug of 0.08 that lies half in shade.
    PlugColour rims = about((angle, r) -> 0.03 + 0.3 * Math.pow((r - 9) / 11, 5));
    assertTrue(shows(rims, 0.05) && !shows(rims, 0.15), "only what is dark");
    PlugColour plug = about((angle, r) -> angle > 0 ? 0.08 : 0.025);
    assertTrue(shows(plug, 0.025) && shows(plug, 0.08) && !shows(plug, 0.2), "shade and light");
  }

  private interface Green {
    double at(double angle, double radiusMm);
  }

  private static PlugColour about(Green green) {
    DrawnDeck.Look look =
        (x, y, rgb) -> {
          Plants.on(0.75).at(x, y, rgb);
          for (double[] at : HOLES) {
            double r = Math.hypot(x - at[0], y - at[1]);
            if (r < 20) {
              double angle = Math.atan2(y - at[1], x - at[0]);
              double[] colour = r < 9 ? Plants.LETTUCE : dull(green.at(angle, r));
              System.arraycopy(colour, 0, rgb, 0, 3);
            }
          }
        };
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 0.5).noise(0).draw(look);
    float[][] light = EvenedPixels.planes(deck.image().rgb(), EvenedPixels.linear(0));
    float[] scores = new float[light[0].length];
    Arrays.fill(scores, 1);
    return PlugColour.of(deck, Plants.LAYOUT, light, scores).orElseThrow();
  }

  /** u = 0.28 and v = 0.52. */
  private static double[] dull(double green) {
    double floor = 0.012;
    return new double[] {
      (green + floor) / Math.exp(0.28) - floor, green, (green + floor) / Math.exp(0.52) - floor
    };
  }

  private static boolean shows(PlugColour plug, double green) {
    double[] rgb = dull(green);
    return plug.shows(rgb[0], rgb[1], rgb[2]);
  }

  private static DeckImage deck(Plants plants) {
    return new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
  }

  private static double areaCm2(DeckImage deck, LeafModel model) {
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    double sum = 0;
    for (byte c : SegmentCanopy.on(deck, Plants.LAYOUT, light, place -> model).coverage()) {
      sum += c & 0xff;
    }
    return sum / 255 / 100;
  }
}
