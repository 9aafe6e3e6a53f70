// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Colours as ln(G/R), ln(G/B) and green light; the numbers of leaf and gloss are chosen by eye. */
class PaleLeafTest {
  private static final double[] LEAF = {0.6, 1.4, 0.3};

  /** The leaf with white of 0.2 of full scale added: half as vivid, and brighter. */
  private static final double[] GLOSS = {0.28, 0.62, 0.5};

  /** Wet moss: pale leaf's hue, a fifth of its light. */
  private static final double[] MOSS = {0.28, 0.62, 0.06};

  /** Light brown foam: as bright as leaf, more red than green. */
  private static final double[] FOAM = {-0.3, 0.7, 0.4};

  @Test
  void whatIsPalerAndBrighterThanTheLeafBesideItIsItsGloss() {
    assertTrue(is(GLOSS, 30));
  }

  @Test
  void whatIsMuchDarkerThanTheLeafIsAMaterialOfItsOwn() {
    assertFalse(is(MOSS, 30));
  }

  @Test
  void anotherHueIsAMaterialOfItsOwn() {
    assertFalse(is(FOAM, 30));
  }

  @Test
  void moreGlossThanLeafIsNoGloss() {
    assertFalse(is(GLOSS, 13));
    assertFalse(is(GLOSS, 0));
  }

  @Test
  void allShadesFromLeafToBlackAreABlurredRim() {
    List<double[]> rim = new ArrayList<>();
    List<double[]> all = new ArrayList<>(Collections.nCopies(20, LEAF));
    for (int i = 1; i <= 20; i++) {
      rim.add(new double[] {0.28, 0.62, 0.015 * i}); // nine tenths are 0.27, leaf 0.3
    }
    all.addAll(rim);
    assertTrue(PaleLeaf.is(GLOSS, rim, all));
  }

  @Test
  void glossIsHalfAsVividAsTheLeafIfWhiteOfTwoThirdsOfItIsAdded() {
    // G 0.3, R 0.3 e^-0.6, B 0.3 e^-1.4, each + 0.2: ln(0.5 / 0.3646), ln(0.5 / 0.2740).
    assertEquals(Math.log(0.5 / (0.3 * Math.exp(-0.6) + 0.2)), GLOSS[0], 0.05);
    assertEquals(Math.log(0.5 / (0.3 * Math.exp(-1.4) + 0.2)), GLOSS[1], 0.05);
  }

  /** Asks of 20 pixels of a colour beside so many of leaf. */
  private static boolean is(double[] colour, int leaf) {
    List<double[]> cluster = Collections.nCopies(20, colour);
    List<double[]> all = new ArrayList<>(cluster);
    all.addAll(Collections.nCopies(leaf, LEAF));
    return PaleLeaf.is(colour, cluster, all);
  }
}
