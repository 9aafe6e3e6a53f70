// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Two leaves over a dark plug with a narrow gap between them, smeared until it looks like leaf. */
class SoftGapsTest {
  private static final int WIDTH = 41;
  private static final int HEIGHT = 31;
  private static final double LEAF = 0.3;
  private static final double PLUG = 0.1;

  @Test
  void aSmearedGapIsAsMuchLeafAsItsLightSays() {
    float[] light = smeared(3, 1.6);
    byte[] coverage = filled();
    new SoftGaps(WIDTH, HEIGHT, light).thin(coverage, leaf(), hole());

    // A gap of 3 px under a blur of 1.6: at its middle erf(1.5 / (1.6 sqrt 2)) = 0.651 of the light
    // is the plug's (tables of the error function), so that 0.349 of it is leaf; the leaf beside it
    // is
    // smeared too, which makes it 0.05 more.
    assertEquals(0.349, (coverage[15 * WIDTH + 20] & 0xff) / 255.0, 0.06);
    assertEquals(255, coverage[15 * WIDTH + 13] & 0xff, "the middle of a leaf");
  }

  @Test
  void leafThatIsALittleDarkerStaysLeaf() {
    float[] light = smeared(0, 1);
    Arrays.fill(light, 15 * WIDTH + 18, 15 * WIDTH + 22, (float) (PLUG + 0.8 * (LEAF - PLUG)));
    byte[] coverage = filled();
    new SoftGaps(WIDTH, HEIGHT, light).thin(coverage, leaf(), hole());

    assertEquals(255, coverage[15 * WIDTH + 20] & 0xff);
  }

  @Test
  void wherePlugAndLeafAreAlikeOrNoPlugShowsNothingIsThinned() {
    byte[] coverage = filled();
    float[] alike = smeared(3, 1.6);
    for (int i = 0; i < alike.length; i++) {
      alike[i] = (float) (LEAF - 0.3 * (LEAF - alike[i])); // the plug at 0.8 of the leaf
    }
    new SoftGaps(WIDTH, HEIGHT, alike).thin(coverage, leaf(), hole());
    assertEquals(255, coverage[15 * WIDTH + 20] & 0xff);

    boolean[] none = new boolean[WIDTH * HEIGHT];
    new SoftGaps(WIDTH, HEIGHT, smeared(3, 1.6)).thin(coverage, leaf(), none);
    assertEquals(255, coverage[15 * WIDTH + 20] & 0xff);
  }

  /** Rows 8 to 22 were taken for leaf; the plug shows above and below them. */
  private static boolean[] leaf() {
    boolean[] leaf = new boolean[WIDTH * HEIGHT];
    Arrays.fill(leaf, 8 * WIDTH, 23 * WIDTH, true);
    return leaf;
  }

  private static boolean[] hole() {
    boolean[] hole = new boolean[WIDTH * HEIGHT];
    Arrays.fill(hole, true);
    return hole;
  }

  private static byte[] filled() {
    byte[] coverage = new byte[WIDTH * HEIGHT];
    Arrays.fill(coverage, 8 * WIDTH, 23 * WIDTH, (byte) 255);
    return coverage;
  }

  /** Light of leaf in rows 8 to 22 but for a gap about column 20, smeared along the rows. */
  private static float[] smeared(int gapPx, double blurPx) {
    float[] light = new float[WIDTH * HEIGHT];
    for (int y = 0, i = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++, i++) {
        double plug = y < 8 || y > 22 ? 1 : inGap(x, gapPx, blurPx);
        light[i] = (float) (LEAF - plug * (LEAF - PLUG));
      }
    }
    return light;
  }

  /** Integrates a Gaussian over the gap by a fine sum. */
  private static double inGap(int x, int gapPx, double blurPx) {
    double sum = 0;
    int parts = 200;
    for (int k = 0; k < parts * gapPx; k++) {
      double off = 20 - gapPx / 2.0 + (k + 0.5) / parts - x;
      sum += Math.exp(-off * off / (2 * blurPx * blurPx)) / parts;
    }
    return sum / (blurPx * Math.sqrt(2 * Math.PI));
  }
}
