// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DimLightTest {
  private static final int SIDE = 60;
  private static final double WHITE = 0.6;
  private static final double BOARD = 0.08;
  private static final double[] SHADED = {0.005, 0.009, 0.004};

  private static EvenedLight light(double board) {
    double[][] flat = {Surface.flat(0), Surface.flat(0), Surface.flat(Math.log(WHITE))};
    return new EvenedLight(LightSource.BOARD, flat, board, true);
  }

  /** Board on the left, shaded leaf from column 30 on, with a camera's noise. */
  private static float[][] photo() {
    Random random = new Random(3);
    float[][] rgb = new float[3][SIDE * SIDE];
    for (int c = 0; c < 3; c++) {
      for (int i = 0; i < SIDE * SIDE; i++) {
        double clean = i % SIDE < 30 ? BOARD : SHADED[c];
        rgb[c][i] = (float) Math.max(0, clean + 0.001 * random.nextGaussian());
      }
    }
    return rgb;
  }

  private static boolean[] found(double board, int from) {
    float[][] rgb = photo();
    float[][] even = new float[3][];
    for (int c = 0; c < 3; c++) {
      even[c] = Binomial.blur(rgb[c], SIDE, SIDE);
      for (int i = 0; i < even[c].length; i++) {
        even[c][i] /= (float) WHITE;
      }
    }
    boolean[] leaf = new boolean[SIDE * SIDE];
    boolean[] counts = new boolean[SIDE * SIDE];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = i % SIDE >= from;
      counts[i] = true;
    }
    DimLight.of(new int[] {SIDE, SIDE}, rgb, light(board)).add(leaf, even, counts, 0.75);
    return leaf;
  }

  private static double share(boolean[] leaf, int from, int to) {
    int n = 0;
    for (int i = 0; i < leaf.length; i++) {
      n += leaf[i] && i % SIDE >= from && i % SIDE < to ? 1 : 0;
    }
    return n / (double) (SIDE * (to - from));
  }

  @Test
  void shadedLeafIsFoundOnADimBoardAndTheBoardIsNot() {
    // With the floor of white, .012 * .6, the leaf scores 2 ln(.0162) - ln(.0122) - ln(.0112) =
    // 0.65 and is missed at 0.75; with the floor of the noise, 4 * .375 * .001, it scores 1.1.
    boolean[] leaf = found(BOARD, SIDE);
    assertTrue(share(leaf, 32, SIDE) > 0.9, "leaf found: " + share(leaf, 32, SIDE));
    assertEquals(0, share(leaf, 0, 28), 0.001);
  }

  @Test
  void nothingIsAddedWhereTheBoardIsBright() {
    boolean[] leaf = found(WHITE, SIDE);
    assertEquals(0, share(leaf, 0, SIDE), 0);
  }

  @Test
  void raisingKeepsTheOrderOfLight() {
    float[][] even = {{0.1f, 0.2f}, {0.1f, 0.2f}, {0.1f, 0.2f}};
    float[][] rgb = photo();
    float[][] raised = DimLight.of(new int[] {SIDE, SIDE}, rgb, light(BOARD)).raised(even);
    assertTrue(raised[1][0] > even[1][0], "raised");
    assertEquals(2 * raised[1][0], raised[1][1], 1e-6);
    assertTrue(Arrays.equals(even[0], new float[] {0.1f, 0.2f}), "its input is not written to");
  }
}
