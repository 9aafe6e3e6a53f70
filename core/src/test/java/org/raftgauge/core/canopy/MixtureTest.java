// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.Srgb;

/**
 * Shares of leaf in mixed pixels: by how they were mixed, and against a library's least squares.
 */
class MixtureTest {
  private static final double[] LEAF = {0.08, 0.22, 0.03};
  private static final double[] BOARD = {0.80, 0.82, 0.78};
  private static final double[] PLUG = {0.02, 0.015, 0.01};

  private static final double NOISE = 0.0002;

  private final Mixture mixture = new Mixture(NOISE);

  @Test
  void aMixtureOfBothSidesIsToldExactly() {
    for (double share = 0; share <= 1; share += 0.125) {
      double[] before = mixed(share, LEAF, 1 - share, BOARD);
      assertEquals(share, mixture.share(before, LEAF, BOARD, true).getAsDouble(), 1e-12);
      assertEquals(share, mixture.share(before, LEAF, BOARD, false).getAsDouble(), 1e-12);
      double[] dark = mixed(share, LEAF, 1 - share, PLUG);
      assertEquals(share, mixture.share(dark, LEAF, PLUG, true).getAsDouble(), 1e-12);
    }
  }

  @Test
  void shadeOnTheBoardIsHardlyLeaf() {
    double[] shaded = mixed(0, LEAF, 0.8, BOARD);
    // Along the straight line from board to leaf a shade of a fifth would be 0.26 of a leaf.
    assertEquals(0.05, mixture.share(shaded, LEAF, BOARD, false).getAsDouble(), 0.01);
    double[] halfInShade = mixed(0.5, LEAF, 0.4, BOARD);
    assertEquals(0.5, mixture.share(halfInShade, LEAF, BOARD, false).getAsDouble(), 0.03);
  }

  @Test
  void greenLightOnTheBoardIsNoLeaf() {
    double[] green = {BOARD[0] - 0.02, BOARD[1] + 0.03, BOARD[2] - 0.03};
    assertEquals(0.0, mixture.share(green, LEAF, BOARD, false).getAsDouble(), 0.02);
  }

  /**
   * Between a board in shade along the straight line (0.26) and with shade as an unknown (0.05) no
   * more than noise lies where the photo is noisy enough: then their mean is the answer.
   */
  @Test
  void whereNoiseLiesBetweenTwoSharesTheirMeanIsTaken() {
    double[] shaded = mixed(0, LEAF, 0.8, BOARD);
    double line = 0;
    double contrast = 0;
    for (int c = 0; c < 3; c++) {
      line += (shaded[c] - BOARD[c]) * (LEAF[c] - BOARD[c]);
      contrast += (LEAF[c] - BOARD[c]) * (LEAF[c] - BOARD[c]);
    }
    Mixture noisy = new Mixture(0.02);
    double mean = 0.5 * (line / contrast + noisy.share(shaded, LEAF, BOARD, true).getAsDouble());
    assertEquals(mean, noisy.share(shaded, LEAF, BOARD, false).getAsDouble(), 1e-12);
  }

  /** A grey photo without noise: brightness is all there is, and both ways say the same. */
  @Test
  void greysAreToldByBrightness() {
    double[] grey = {0.2, 0.2, 0.2};
    double[] white = {0.3, 0.3, 0.3};
    Mixture still = new Mixture(0);
    for (double share = 0; share <= 1; share += 0.25) {
      double[] mixed = mixed(share, grey, 1 - share, white);
      assertEquals(share, still.share(mixed, grey, white, false).getAsDouble(), 1e-9);
    }
  }

  @Test
  void aThirdThingAndTwoAlikeAreNotTold() {
    double[] red = {0.6, 0.05, 0.05};
    assertTrue(mixture.share(red, LEAF, BOARD, true).isEmpty());
    double[] likeLeaf = {0.085, 0.222, 0.031};
    assertTrue(mixture.share(LEAF, LEAF, likeLeaf, true).isEmpty());
  }

  /** Least squares by Hipparchus's QR of the four weighted rows, in place of normal equations. */
  @Test
  void sharesAreThoseOfTheLibrarysLeastSquares() {
    Random random = new Random(5);
    int told = 0;
    for (int n = 0; n < 1000; n++) {
      double[] leaf = light(random, 0.05, 0.3);
      double[] ground = light(random, 0.3, 0.9);
      double share = random.nextDouble();
      double[] pixel = mixed(share, leaf, (1 - share) * (0.7 + 0.3 * random.nextDouble()), ground);
      var answer = mixture.share(pixel, leaf, ground, true);
      if (answer.isPresent()) {
        told++;
        assertEquals(library(pixel, leaf, ground), answer.getAsDouble(), 1e-8, "draw " + n);
      }
    }
    assertTrue(told > 900, told + " of 1000 told");
  }

  private static double library(double[] pixel, double[] leaf, double[] ground) {
    double[] l = opponent(leaf);
    double[] g = opponent(ground);
    double[] p = opponent(pixel);
    double variance = NOISE * NOISE + 1e-8;
    double colour = Math.hypot(l[1] - g[1], l[2] - g[2]);
    double sharp = 1 / Math.sqrt(variance + Math.pow(0.05 * (l[0] - g[0]), 2));
    double soft = 1 / Math.sqrt(variance + Math.pow(0.15 * colour, 2));
    double[][] rows = {
      {sharp * l[0], sharp * g[0]}, {soft * l[1], soft * g[1]}, {soft * l[2], soft * g[2]}, {5, 5}
    };
    double[] right = {sharp * p[0], soft * p[1], soft * p[2], 5};
    double share =
        new QRDecomposition(new Array2DRowRealMatrix(rows))
            .getSolver()
            .solve(new ArrayRealVector(right))
            .getEntry(0);
    return Math.max(0, Math.min(1, share));
  }

  private static double[] opponent(double[] light) {
    double y = Srgb.luminance(light[0], light[1], light[2]);
    return new double[] {y, light[0] - y, light[2] - y};
  }

  private static double[] light(Random random, double least, double most) {
    double[] light = new double[3];
    for (int c = 0; c < 3; c++) {
      light[c] = least + (most - least) * random.nextDouble();
    }
    return light;
  }

  private static double[] mixed(double share, double[] leaf, double lit, double[] ground) {
    double[] pixel = new double[3];
    for (int c = 0; c < 3; c++) {
      pixel[c] = share * leaf[c] + lit * ground[c];
    }
    return pixel;
  }
}
