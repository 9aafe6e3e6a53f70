// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The steps of the decision on open ground, one by one. */
class OpenGroundPartsTest {
  @Test
  void theGroundIsTheCommonestGreennessAndTheThresholdAShareOfTheLeaves() {
    // 90 % soil at -2 +- 1, 10 % leaf at 20 +- 1. Leaf level over ground 22, weighted by contrast
    // a little more; 0.38 * 22.1 = 8.4.
    float[] green = normal(90_000, -2, 1, 10_000, 20, 1);
    GroundLevel level = GroundLevel.of(green);
    assertEquals(-2, level.ground(), 0.51);
    assertEquals(0.38 * (20 - level.ground()), level.threshold(), 0.15);
    assertEquals(1, level.contrast(level.ground() + level.threshold()), 1e-12);
  }

  @Test
  void grassMoreCommonThanSoilIsNotTakenForGround() {
    // The prior of 4 a* weighs a mode at 22 down by exp(-15).
    GroundLevel level = GroundLevel.of(normal(10_000, 0, 1, 90_000, 22, 1));
    assertEquals(0, level.ground(), 0.51);
  }

  @Test
  void aClosedCanopyIsNoGround() {
    // Nothing but leaf at 25 +- 3: the nearest to none is its darkest, over 2 * 4 of any soil.
    GroundLevel level = GroundLevel.of(normal(0, 0, 0, 100_000, 25, 3));
    assertEquals(0, level.ground());
    assertEquals(0.38 * 25, level.threshold(), 0.6);
  }

  @Test
  void bareGroundGetsTheLeastThreshold() {
    // Scatter 3 a*: 1.6 * 3 = 4.8; the leaf level of what lies above pulls it no lower.
    GroundLevel level = GroundLevel.of(normal(100_000, 0, 3, 0, 0, 0));
    assertEquals(4.8, level.threshold(), 0.4);
    // Scatter 0.5: the visible 3.
    assertEquals(3, GroundLevel.of(normal(100_000, 0, 0.5, 0, 0, 0)).threshold(), 1e-9);
  }

  private static float[] normal(int n, double mean, double sd, int m, double other, double sd2) {
    Random random = new Random(5);
    float[] values = new float[n + m];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          (float) (i < n ? mean + sd * random.nextGaussian() : other + sd2 * random.nextGaussian());
    }
    return values;
  }

  @Test
  void aSmoothedPointSpreadsAsTheBellCurve() {
    byte[] rgb = new byte[3 * 21 * 21];
    rgb[3 * (10 * 21 + 10) + 1] = (byte) 255;
    byte[] blurred = Gaussian.blur(rgb, 21, 21, 1.0);
    // 255 / (2 pi) = 40.6 at the middle, times exp(-1/2) = 24.6 beside it (sums over cells differ
    // from densities by under 1 %).
    assertEquals(41, blurred[3 * (10 * 21 + 10) + 1], 1);
    assertEquals(25, blurred[3 * (10 * 21 + 11) + 1], 1);
    assertEquals(25, blurred[3 * (11 * 21 + 10) + 1], 1);
    assertEquals(0, blurred[3 * (10 * 21 + 10)]);
  }

  @Test
  void smoothingLeavesAFlatPictureAsItIsUpToTheRim() {
    byte[] rgb = new byte[3 * 5 * 4];
    Arrays.fill(rgb, (byte) 200);
    assertArrayEquals(rgb, Gaussian.blur(rgb, 5, 4, 2.5));
  }

  @Test
  void theGuidedFilterFollowsItsGuide() {
    // Where the plane is a line of the guide and the guide varies strongly, it comes back as it is.
    Random random = new Random(3);
    float[] guide = new float[40 * 30];
    float[] plane = new float[guide.length];
    for (int i = 0; i < guide.length; i++) {
      guide[i] = random.nextInt(2) * 2;
      plane[i] = 0.5f * guide[i] - 0.2f;
    }
    float[] smooth = new GuidedFilter(40, 30, 4, 1e-4f).smooth(guide, plane);
    assertArrayEquals(plane, smooth, 1e-3f);
    // Under a flat guide only the mean is left.
    float[] flat = new GuidedFilter(40, 30, 40, 0.02f).smooth(new float[guide.length], plane);
    double mean = 0;
    for (float p : plane) {
      mean += p / plane.length;
    }
    assertEquals(mean, flat[0], 1e-4);
  }

  @Test
  void theMeanOverASquareCountsOnlyThePicture() {
    float[] values = {1, 2, 3, 4, 5, 6};
    // 3 x 2 picture: all rows; columns 0-1, 0-2, 1-2.
    float[] means = BoxMean.of(values, 3, 2, 1);
    assertArrayEquals(new float[] {3, 3.5f, 4, 3, 3.5f, 4}, means, 1e-6f);
  }

  @Test
  void partsThatMeetAtACornerAreOneOnlyWithDiagonals() {
    boolean[] mask = {true, false, false, true};
    assertEquals(2, Parts.of(mask, 2, 2).count());
    assertEquals(1, Parts.alsoDiagonal(mask, 2, 2).count());
  }

  @Test
  void coloursOfTheSureLeafTellTheUnsure() {
    // Leaves are yellowish, green stones bluish; a colour between in greenness goes by its kin.
    GroundLevel level = new GroundLevel(0, 10);
    int n = 3000;
    float[] green = new float[2 * n];
    int[] cells = new int[2 * n];
    Random random = new Random(9);
    for (int i = 0; i < 2 * n; i++) {
      boolean leaf = i < n;
      double g = (leaf ? 14 : 6) + 3 * random.nextGaussian();
      green[i] = (float) g;
      cells[i] = LeafColours.cell(new Cielab(50, -g, leaf ? 30 : -10));
    }
    float[] table = LeafColours.learn(green, cells, level);
    float yellow = table[LeafColours.cell(new Cielab(50, -10, 30))];
    float blue = table[LeafColours.cell(new Cielab(50, -10, -10))];
    assertTrue(yellow > 0.5 && yellow > blue, yellow + " and " + blue);
    // A colour that the photo lacks goes by its contrast.
    assertTrue(table[LeafColours.cell(new Cielab(90, -40, 80))] > 0.99);
    assertTrue(table[LeafColours.cell(new Cielab(90, 40, 80))] < 0.01);
  }

  @Test
  void aPartMustStandOutAndHaveACrispEdge() {
    boolean[] core = new boolean[60 * 60];
    float[] crisp = new float[core.length];
    float[] faded = new float[core.length];
    for (int i = 0; i < core.length; i++) {
      double r = Math.hypot(i % 60 - 30, Math.floorDiv(i, 60) - 30);
      core[i] = r < 8;
      crisp[i] = r < 8 ? 2.5f : 0.2f;
      faded[i] = (float) Math.max(0, 2.5 - r / 20);
    }
    assertArrayEquals(core, new CrispParts(60, 60, crisp, 8).keep(core));
    // A slope of 1/20 of a threshold of 8 a* is 0.4 a pixel.
    assertArrayEquals(new boolean[core.length], new CrispParts(60, 60, faded, 8).keep(core));
    // Half as high it does not stand out by a threshold, however crisp.
    float[] low = new float[core.length];
    for (int i = 0; i < core.length; i++) {
      low[i] = core[i] ? 1.1f : 0.2f;
    }
    assertArrayEquals(new boolean[core.length], new CrispParts(60, 60, low, 20).keep(core));
  }
}
