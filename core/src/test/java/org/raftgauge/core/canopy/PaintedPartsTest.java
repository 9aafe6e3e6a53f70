// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Coloured labels beside plants, on drawn decks whose exact areas are known. */
class PaintedPartsTest {
  /** Yellow of a 24-patch chart, sRGB 231, 199, 31 made linear (IEC 61966-2-1). */
  private static final double[] YELLOW = {0.799, 0.571, 0.0137};

  /** Orange-yellow of the same chart, sRGB 224, 163, 46. */
  private static final double[] ORANGE = {0.745, 0.366, 0.027};

  /** Leaf short of chlorophyll, sRGB 194, 189, 98 made linear (chosen by eye). */
  private static final double[] PALE = {0.539, 0.509, 0.122};

  /** Dark red leaf, sRGB 94, 42, 46 made linear (chosen by eye). */
  private static final double[] RED_LEAF = {0.112, 0.023, 0.027};

  @Test
  void aYellowLabelThatTouchesASeedlingIsNoPartOfIt() {
    for (double board : new double[] {0.75, 0.2}) {
      Plants plants = Plants.on(board).disc(80, 110, 25, YELLOW).disc(80, 80, 12, Plants.LETTUCE);
      // Half a pixel of the 12 mm rim is 8 %; the label is four times the leaf.
      assertEquals(1, areaCm2(plants, LeafModel.GREEN_LEAF) / (1.44 * Math.PI), 0.08);
    }
  }

  @Test
  void anOrangeLabelAmongRedLeafIsNoPartOfIt() {
    Plants plants = Plants.on(0.75).disc(80, 120, 30, ORANGE).disc(80, 80, 38, RED_LEAF);
    assertEquals(1, areaCm2(plants, LeafModel.RED_LEAF) / (14.44 * Math.PI), 0.03);
  }

  @Test
  void aYellowLabelUnderALeafTakesNothingFromIt() {
    Plants over = Plants.on(0.75).disc(80, 80, 45, YELLOW).disc(80, 80, 38, Plants.LETTUCE);
    assertEquals(1, areaCm2(over, LeafModel.GREEN_LEAF) / (14.44 * Math.PI), 0.02);
  }

  @Test
  void aLeafShortOfChlorophyllIsMeasured() {
    Plants plants = Plants.on(0.75).disc(80, 80, 38, PALE);
    assertEquals(1, areaCm2(plants, LeafModel.GREEN_LEAF) / (14.44 * Math.PI), 0.02);
  }

  @Test
  void dyesArePurerThanTissue() {
    for (double[] dye : new double[][] {YELLOW, ORANGE}) {
      assertTrue(pure(dye));
    }
    // A chart's yellow-green, sRGB 157, 188, 64, stands for the yellowest of green leaf.
    double[] yellowGreen = {0.337, 0.503, 0.051};
    double[] dry = {0.254, 0.144, 0.045};
    for (double[] tissue :
        new double[][] {PALE, RED_LEAF, Plants.LETTUCE, Plants.DARK_LEAF, yellowGreen, dry}) {
      assertFalse(pure(tissue));
    }
  }

  @Test
  void whatIsShadedLikeAFoldedLeafIsNotFlat() {
    int width = 40;
    float[][] even = new float[3][width * width];
    for (int c = 0; c < 3; c++) {
      for (int i = 0; i < even[c].length; i++) {
        boolean on = i % width > 9 && i % width < 30;
        // Lightness falls to 40 % over the part: ln 2.5 / 2 = 0.46 between its quarters.
        double fold = 1 - 0.6 * (i % width - 10) / 20;
        even[c][i] = (float) (on ? fold * YELLOW[c] : 0.75);
      }
    }
    assertEquals(0, PaintedParts.find(even, even, width).length);
  }

  @Test
  void leafWhoseRedAndGreenAreCutOffAtFullScaleIsNoCard() {
    int width = 20;
    float[][] even = new float[3][width * width];
    for (int c = 0; c < 3; c++) {
      Arrays.fill(even[c], (float) YELLOW[c]);
    }
    float[][] clipped = new float[3][width * width];
    Arrays.fill(clipped[0], 1);
    Arrays.fill(clipped[1], 1);
    assertEquals(0, PaintedParts.find(even, clipped, width).length);
    assertEquals(width * width, PaintedParts.find(even, even, width).length);
  }

  private static boolean pure(double[] c) {
    return PaintedParts.pure((float) c[0], (float) c[1], (float) c[2]);
  }

  private static double areaCm2(Plants plants, LeafModel model) {
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    double sum = 0;
    for (byte c : SegmentCanopy.on(deck, Plants.LAYOUT, light, place -> model).coverage()) {
      sum += c & 0xff;
    }
    return sum / 25500;
  }
}
