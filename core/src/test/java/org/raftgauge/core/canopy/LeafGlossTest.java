// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Reflections on a drawn leaf: 60 px wide and high, at 70 to 129, in a picture of 200 px. */
class LeafGlossTest {
  private static final int SIDE = 200;
  private static final double THRESHOLD = 1;

  private final float[][] even = new float[3][SIDE * SIDE];
  private final float[] scores = new float[SIDE * SIDE];
  private final boolean[] leaf = new boolean[SIDE * SIDE];
  private final boolean[] counts = new boolean[SIDE * SIDE];

  private LeafGlossTest() {
    Arrays.fill(counts, true);
    paint(0, 0, SIDE, new float[] {0.9f, 0});
    paint(70, 70, 60, new float[] {0.3f, 2});
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = scores[i] > THRESHOLD;
    }
  }

  /** Paints a square with a brightness and a score; what scores little is no leaf. */
  private void paint(int left, int top, int side, float[] lightAndScore) {
    for (int y = top; y < top + side; y++) {
      for (int x = left; x < left + side; x++) {
        int i = y * SIDE + x;
        for (float[] plane : even) {
          plane[i] = lightAndScore[0];
        }
        scores[i] = lightAndScore[1];
        leaf[i] = lightAndScore[1] > THRESHOLD;
      }
    }
  }

  private void add() {
    new LeafGloss(new int[] {SIDE, SIDE}, even, scores).add(leaf, counts, THRESHOLD);
  }

  private int count() {
    int n = 0;
    for (boolean is : leaf) {
      n += is ? 1 : 0;
    }
    return n;
  }

  @Test
  void aBrightReflectionAtTheLeafsEdgeIsGivenBackToItButForTheRim() {
    paint(110, 110, 20, new float[] {0.6f, 0.7f});
    assertFalse(leaf[120 * SIDE + 120]);
    add();
    assertTrue(leaf[120 * SIDE + 120]);
    // The outermost pixel of its two free sides, 20 + 20 - 1, is rim, and so is the corner's next.
    assertEquals(3600 - 39 - 1, count());
  }

  @Test
  void theMixedRimOfALeafIsNoReflection() {
    // Two px all round, as bright and as weak in colour.
    for (int k = 68; k < 132; k++) {
      for (int d : new int[] {68, 69, 130, 131}) {
        paint(k, d, 1, new float[] {0.6f, 0.7f});
        paint(d, k, 1, new float[] {0.6f, 0.7f});
      }
    }
    add();
    // A corner of two rims may be rounded: a few pixels of the 496.
    assertTrue(count() < 3600 + 25, "" + count());
  }

  @Test
  void aDullOrDarkGapBetweenLeavesStaysOpen() {
    paint(110, 110, 20, new float[] {0.9f, 0.3f}); // board with a green cast
    paint(75, 75, 12, new float[] {0.35f, 0.7f}); // shade
    add();
    assertEquals(3600 - 400 - 144, count());
  }

  @Test
  void whereFilmsOfSuchColourLieFarFromPlantsNoneIsBelieved() {
    paint(110, 110, 20, new float[] {0.6f, 0.7f});
    paint(5, 5, 20, new float[] {0.6f, 0.7f});
    add();
    assertEquals(3600 - 400, count());
  }

  @Test
  void aPictureWithoutLeafGetsNone() {
    paint(0, 0, SIDE, new float[] {0.9f, 0.7f});
    add();
    assertEquals(0, count());
  }
}
