// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Gaps of 4 x 4 pixels in a square plant; holes are 10 pixels wide, 78.5 of area. */
class TintedGapsTest {
  private static final int SIDE = 30;
  private static final double HOLE_PX = 10;

  private static final double LIT = 0.10;
  private static final double SHADED = 0.05;
  private static final double BROWN = 0.6;
  private static final double GREY = 0.1;

  /** Returns how many of the gap's 16 pixels are leaf in the end. */
  private static int filled(int plantPx, double light, double score, boolean overHole) {
    boolean[] leaf = new boolean[SIDE * SIDE];
    float[] luminance = new float[leaf.length];
    float[] scores = new float[leaf.length];
    boolean[] hole = new boolean[leaf.length];
    Arrays.fill(luminance, 0.5f);
    Arrays.fill(hole, overHole);
    int first = 2;
    int gap = first + plantPx / 2 - 2;
    for (int y = first; y < first + plantPx; y++) {
      for (int x = first; x < first + plantPx; x++) {
        boolean inGap = x >= gap && x < gap + 4 && y >= gap && y < gap + 4;
        leaf[y * SIDE + x] = !inGap;
        luminance[y * SIDE + x] = (float) (inGap ? light : 0.11);
        scores[y * SIDE + x] = (float) (inGap ? score : 1.5);
      }
    }
    new TintedGaps(new int[] {SIDE, SIDE}, luminance, scores, hole).fill(leaf, HOLE_PX);
    int count = 0;
    for (int y = gap; y < gap + 4; y++) {
      for (int x = gap; x < gap + 4; x++) {
        count += leaf[y * SIDE + x] ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void brownInAGrownPlantAsBrightAsItsLeavesIsLeaf() {
    assertEquals(16, filled(20, LIT, BROWN, true));
  }

  @Test
  void brownInTheShadeOfLeavesIsAPlug() {
    assertEquals(0, filled(20, SHADED, BROWN, true));
  }

  @Test
  void besideTheHoleItMayBeBoardLitThroughLeaves() {
    assertEquals(0, filled(20, LIT, BROWN, false));
  }

  @Test
  void greyIsAPlugHoweverBright() {
    assertEquals(0, filled(20, LIT, GREY, true));
  }

  @Test
  void brownInAPlantThatHardlyCoversItsHoleMayBeThePlug() {
    // 12 x 12 less the gap is 128 pixels, under two holes.
    assertEquals(0, filled(12, LIT, BROWN, true));
  }
}
