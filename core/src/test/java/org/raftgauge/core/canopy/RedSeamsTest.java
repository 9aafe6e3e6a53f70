// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Seams of known width and light across a square of leaf of light 0.1. */
class RedSeamsTest {
  private static final int SIDE = 30;
  private static final int MIDDLE = SIDE * SIDE / 2 + (SIDE - 1) / 2;

  @Test
  void aNarrowSeamAsLightAsTheLeafIsClosed() {
    for (int width = 1; width <= 4; width++) {
      boolean[] leaf = seam(width);
      assertFalse(leaf[MIDDLE]);
      RedSeams.close(leaf, light(width, 0.07f), all(), new int[] {SIDE, SIDE});
      boolean[] whole = new boolean[leaf.length];
      Arrays.fill(whole, true);
      assertArrayEquals(whole, leaf, width + " px");
    }
  }

  @Test
  void aDarkOneAWideOneAndOneElsewhereStayOpen() {
    boolean[] dark = seam(2);
    RedSeams.close(dark, light(2, 0.05f), all(), new int[] {SIDE, SIDE});
    assertArrayEquals(seam(2), dark);
    boolean[] wide = seam(6);
    RedSeams.close(wide, light(6, 0.1f), all(), new int[] {SIDE, SIDE});
    assertFalse(wide[MIDDLE]);
    boolean[] elsewhere = seam(2);
    RedSeams.close(elsewhere, light(2, 0.1f), new boolean[SIDE * SIDE], new int[] {SIDE, SIDE});
    assertArrayEquals(seam(2), elsewhere);
    assertTrue(elsewhere[0]);
  }

  private static boolean inSeam(int i, int width) {
    int off = i % SIDE - (SIDE - width) / 2;
    return off >= 0 && off < width;
  }

  private static boolean[] seam(int width) {
    boolean[] leaf = new boolean[SIDE * SIDE];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = !inSeam(i, width);
    }
    return leaf;
  }

  private static float[] light(int width, float seam) {
    float[] light = new float[SIDE * SIDE];
    for (int i = 0; i < light.length; i++) {
      light[i] = inSeam(i, width) ? seam : 0.1f;
    }
    return light;
  }

  private static boolean[] all() {
    boolean[] all = new boolean[SIDE * SIDE];
    Arrays.fill(all, true);
    return all;
  }
}
