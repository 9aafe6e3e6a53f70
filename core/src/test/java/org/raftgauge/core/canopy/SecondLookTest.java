// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.opencv.DistanceTo;

/** The second look at open ground, term by term and as a whole. */
class SecondLookTest {
  private static final int WIDTH = 80;
  private static final int HEIGHT = 60;
  private static final int[] SOIL = {130, 105, 80};

  /** A flat picture of soil; the contrast is handed in apart. */
  private static Greenness soil() {
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < rgb.length; i++) {
      rgb[i] = (byte) SOIL[i % 3];
    }
    boolean[] seen = new boolean[WIDTH * HEIGHT];
    Arrays.fill(seen, true);
    return Greenness.of(rgb, WIDTH, HEIGHT, seen);
  }

  /** A band of columns set to a value. */
  private static float[] band(int from, int to, float inside, float outside) {
    float[] plane = new float[WIDTH * HEIGHT];
    for (int i = 0; i < plane.length; i++) {
      int x = i % WIDTH;
      plane[i] = x >= from && x < to ? inside : outside;
    }
    return plane;
  }

  private static GroundEvidence.First first(float[] colour, float[] share) {
    return new GroundEvidence.First(colour, share);
  }

  private static float[] look(GroundEvidence evidence, Greenness greenness) {
    float[] share = SecondLook.share(evidence, greenness.seen);
    SecondLook.dropNew(share, evidence, greenness);
    return share;
  }

  private static double[] terms(GroundEvidence evidence, int x, int y) {
    double[] terms = new double[GroundEvidence.TERMS];
    evidence.at(y * WIDTH + x, terms);
    return terms;
  }

  @Test
  void termsAreWhatTheirListSays() {
    float[] contrast = band(0, 20, 2, 0);
    float[] leaf = band(0, 20, 1, 0);
    GroundEvidence evidence = new GroundEvidence(soil(), contrast, 8, first(leaf, leaf));
    double[] inside = terms(evidence, 5, 30);
    // 2, past 0.5, 1, 1.5; on leaf; all alike near.
    assertEquals(2, inside[1]);
    assertEquals(1.5, inside[2]);
    assertEquals(1, inside[3]);
    assertEquals(0.5, inside[4]);
    assertEquals(0, inside[5]);
    assertEquals(1.5, inside[9], 1e-6);
    assertEquals(1, inside[12]);
    // Column 29 is 10 px from column 19; the distance is within 5 %.
    double[] outside = terms(evidence, 29, 30);
    assertEquals(1.0, outside[5], 0.05);
    // Farther than 30 px counts as 30.
    assertEquals(3, terms(evidence, 70, 30)[5], 1e-6);
    // Soil and leaf are equally light here.
    assertEquals(0, outside[6], 1e-4);
    assertEquals(0, outside[7], 1e-4);
    // 31 columns to the right and 29 to the left fit in (0..59), 20 of them leaf.
    assertEquals(20.0 / 60, outside[8], 1e-5);
    // The step of 2 contrasts at the band's edge: Sobel gives 2 * 4 / 8 = 1 on both sides of it,
    // times 8 a*; of the 9 columns about column 19 two have it.
    assertEquals(8 * 2.0 / 9, terms(evidence, 19, 30)[11], 1e-4);
  }

  @Test
  void leafLighterThanItsGroundIsToldByTensOfLightness() {
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < rgb.length; i++) {
      rgb[i] = (byte) (i / 3 % WIDTH < 20 ? 200 : 100);
    }
    boolean[] seen = new boolean[WIDTH * HEIGHT];
    Arrays.fill(seen, true);
    float[] leaf = band(0, 20, 1, 0);
    GroundEvidence evidence =
        new GroundEvidence(
            Greenness.of(rgb, WIDTH, HEIGHT, seen), band(0, 20, 2, 0), 8, first(leaf, leaf));
    // CIELAB of grey 200 and 100 in sRGB: L* 80.6 and 42.4 (Lindbloom's formulas, by hand).
    // Calming by 0.8 px lightens the first columns of the ground: 27 % of 38 in one of 16.
    assertEquals(3.82, terms(evidence, 5, 30)[6], 0.1);
    assertEquals(3.82, terms(evidence, 5, 30)[7], 0.1);
    assertEquals(0, terms(evidence, 60, 30)[6], 0.03);
  }

  @Test
  void weakLeafCountsBesideLeafAndNotFarFromIt() {
    float[] contrast = band(0, 20, 3, 0.1f);
    float[] leaf = band(0, 20, 1, 0);
    float[] colour = band(0, 20, 1, 0);
    for (int y = 20; y < 26; y++) {
      for (int x = 0; x < 6; x++) {
        contrast[y * WIDTH + 20 + x] = 1.1f;
        colour[y * WIDTH + 20 + x] = 0.7f;
        contrast[y * WIDTH + 70 + x] = 1.1f;
        colour[y * WIDTH + 70 + x] = 0.7f;
      }
    }
    Greenness soil = soil();
    float[] share = look(new GroundEvidence(soil, contrast, 8, first(colour, leaf)), soil);
    assertTrue(share[22 * WIDTH + 21] > 0.5, "beside leaf " + share[22 * WIDTH + 21]);
    assertEquals(0, share[22 * WIDTH + 72], "far from leaf");
    assertTrue(share[40 * WIDTH + 10] > 0.9, "leaf stays leaf");
    assertEquals(0, share[40 * WIDTH + 60], "bare ground stays bare");
  }

  @Test
  void aPartThatTheFirstDecisionFoundNothingOfIsNoLeaf() {
    float[] strong = band(0, 20, 3, 3);
    float[] colour = band(0, 20, 1, 1);
    Greenness soil = soil();
    float[] share =
        look(new GroundEvidence(soil, strong, 8, first(colour, new float[colour.length])), soil);
    for (float s : share) {
      assertEquals(0, s);
    }
  }

  @Test
  void nothingIsFoundWhereThePhotoShowsNothing() {
    Greenness soil = soil();
    Arrays.fill(soil.seen, 0, 10 * WIDTH, false);
    float[] leaf = band(0, 80, 1, 0);
    float[] share = look(new GroundEvidence(soil, band(0, 80, 3, 0), 8, first(leaf, leaf)), soil);
    assertEquals(0, share[5 * WIDTH + 10]);
    assertTrue(share[30 * WIDTH + 10] > 0.99);
  }

  @Test
  void distancesAreThoseOfThePlainLoopWithinAFewHundredths() {
    Random random = new Random(4);
    for (int n = 0; n < 20; n++) {
      boolean[] on = new boolean[30 * 20];
      for (int k = 0; k < 1 + n % 4; k++) {
        on[random.nextInt(on.length)] = true;
      }
      float[] found = DistanceTo.nearest(on, 30, 20);
      for (int i = 0; i < on.length; i++) {
        double plain = plainDistance(on, i);
        // The 3 x 3 mask's weights 0.955 and 1.3693 (OpenCV's documentation): within 5 %.
        assertEquals(plain, found[i], 0.05 * plain + 1e-3);
      }
    }
    assertEquals(Float.MAX_VALUE, DistanceTo.nearest(new boolean[12], 4, 3)[5]);
  }

  private static double plainDistance(boolean[] on, int at) {
    double least = Double.MAX_VALUE;
    for (int i = 0; i < on.length; i++) {
      if (on[i]) {
        double dx = i % 30 - at % 30;
        double dy = Math.floorDiv(i, 30) - Math.floorDiv(at, 30);
        least = Math.min(least, Math.hypot(dx, dy));
      }
    }
    return least;
  }

  @Test
  void slopesOfAPlaneAreItsSteepness() {
    float[] plane = new float[10 * 8];
    for (int i = 0; i < plane.length; i++) {
      plane[i] = 3 * (i % 10) + 4 * Math.floorDiv(i, 10);
    }
    // hypot(3, 4) a pixel; at the left rim the x step is halved: hypot(1.5, 4).
    assertEquals(5, new Slope(10, 8, plane).at(4, 4), 1e-6);
    assertEquals(Math.hypot(1.5, 4), new Slope(10, 8, plane).all()[4 * 10], 1e-6);
  }
}
