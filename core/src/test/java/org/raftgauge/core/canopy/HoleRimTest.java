// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Holes of drawn boards: how wide they are is known. */
class HoleRimTest {
  /** sRGB 125, 90, 60 in linear light (IEC 61966-2-1). */
  private static final double[] COIR = {0.205, 0.102, 0.045};

  private static final double[][] HOLES = {{80, 80}, {220, 80}, {80, 220}, {220, 220}};

  private static double radiusPx(Plants plants) {
    DeckImage deck = new DrawnDeck(Plants.LAYOUT.board(), 1).blur(1).noise(2).draw(plants);
    EvenedLight light = SegmentCanopy.evenLight(deck, Plants.LAYOUT);
    int width = deck.image().width();
    int height = deck.image().height();
    float[][] even = new float[3][width * height];
    EvenedPixels pixels = EvenedPixels.ofBoard(deck, light);
    for (int i = 0; i < width * height; i++) {
      float[] rgb = pixels.at(i % width, Math.floorDiv(i, width));
      for (int c = 0; c < 3; c++) {
        even[c][i] = rgb[c];
      }
    }
    float[] scores = new float[width * height];
    for (int i = 0; i < scores.length; i++) {
      scores[i] = LeafModel.GREEN_LEAF.table().score(even[0][i], even[1][i], even[2][i]);
    }
    return HoleRim.radiusPx(deck, Plants.LAYOUT, even, scores);
  }

  @ParameterizedTest
  @ValueSource(doubles = {18, 22, 26, 30})
  void theRimIsWhereTheBoardSetsIn(double radiusMm) {
    Plants plants = Plants.on(0.75).plugs(0.75, 0.75, 0.75);
    for (double[] hole : HOLES) {
      plants.disc(hole[0], hole[1], radiusMm, COIR).disc(hole[0], hole[1], 12, Plants.LETTUCE);
    }
    assertEquals(radiusMm, radiusPx(plants), 0.75);
  }

  /** Plugs of the board's own colour show no rim: the usual net cup of 50 mm stands. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 15})
  void whereNoRimShowsTheUsualRadiusStands(double plantMm) {
    Plants plants = Plants.on(0.75).plugs(0.75, 0.75, 0.75);
    for (double[] hole : HOLES) {
      if (plantMm > 0) {
        plants.disc(hole[0], hole[1], plantMm, Plants.LETTUCE);
      }
    }
    assertEquals(25, radiusPx(plants));
  }
}
