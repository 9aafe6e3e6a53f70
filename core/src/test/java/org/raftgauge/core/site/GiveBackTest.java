// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PointPx;

class GiveBackTest {
  private static final int SIDE = 120;
  private static final PointPx[] FEET = {new PointPx(40, 60), new PointPx(95, 60)};

  private static short[] bare() {
    short[] owner = new short[SIDE * SIDE];
    Arrays.fill(owner, AllotCanopy.NONE);
    return owner;
  }

  private static void disc(short[] owner, double[] disc, int site) {
    for (int i = 0; i < owner.length; i++) {
      if (Math.hypot(i % SIDE - disc[0], Math.floorDiv(i, SIDE) - disc[1]) <= disc[2]
          && owner[i] == AllotCanopy.NONE) {
        owner[i] = (short) site;
      }
    }
  }

  private static long area(short[] owner, int site) {
    int n = 0;
    for (short o : owner) {
      n += o == site ? 1 : 0;
    }
    return n;
  }

  @Test
  void aLeafThatComesInFromOneSideIsGivenBack() {
    short[] owner = bare();
    disc(owner, new double[] {98, 60, 17}, 1); // the tip of a leaf that ends just past the foot
    for (int i = 0; i < owner.length; i++) {
      boolean tip = owner[i] == 1 && i % SIDE <= 96;
      owner[i] = tip ? (short) 1 : AllotCanopy.NONE;
    }
    disc(owner, new double[] {40, 60, 43}, 0);
    new GiveBack(SIDE, SIDE, FEET).overhangs(owner);
    assertEquals(0, area(owner, 1));
  }

  @Test
  void aLargeLeafFromOneSideIsGivenBackToAPlantTwiceItsSize() {
    assertEquals(0, besideHalfPlant(94));
    assertEquals(884, besideHalfPlant(96), "a px past the foot it shows in 9 of 16 directions");
  }

  /** A leaf 26 x 34 px that ends at a column, grown from a plant of some 1960 px. */
  private static long besideHalfPlant(int end) {
    short[] owner = bare();
    for (int i = 0; i < owner.length; i++) {
      int x = i % SIDE;
      int y = Math.floorDiv(i, SIDE);
      boolean leaf = x > end - 26 && x <= end && y >= 43 && y < 77;
      owner[i] = leaf ? (short) 1 : AllotCanopy.NONE;
    }
    disc(owner, new double[] {end - 49, 60, 25}, 0);
    new GiveBack(SIDE, SIDE, FEET).overhangs(owner);
    return area(owner, 1);
  }

  @Test
  void aPlantOfThinStalksKeepsItsLeaves() {
    short[] owner = bare();
    for (int k = 0; k < 8; k++) {
      double angle = Math.PI / 4 * k;
      double[] blade = {95 + 14 * Math.cos(angle), 60 + 14 * Math.sin(angle), 5};
      disc(owner, blade, 1);
    }
    disc(owner, new double[] {40, 60, 43}, 0);
    long own = area(owner, 1);
    new GiveBack(SIDE, SIDE, FEET).overhangs(owner);
    assertEquals(own, area(owner, 1));
  }
}
