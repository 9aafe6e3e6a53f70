// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Softmax regression against what its equations say by hand, and back from known weights. */
class SoftmaxTest {
  private static final double NO_RIDGE = 1e-12;

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  @Test
  void aConstantGivesTheLogOddsOfTheShares() {
    // Shares 6, 3, 1 of 10: ln 6, ln 3 against the last class.
    double[][] x = new double[10][];
    int[] y = {0, 0, 0, 0, 0, 0, 1, 1, 1, 2};
    Arrays.setAll(x, i -> new double[] {1});
    double[][] w = Softmax.fit(new Softmax.Sample(x, y, ones(10)), 3, NO_RIDGE);
    assertEquals(Math.log(6), w[0][0], 1e-4);
    assertEquals(Math.log(3), w[1][0], 1e-4);
    assertEquals(0, w[2][0]);
  }

  @Test
  void weightsCountAsManyCases() {
    double[][] x = {{1}, {1}};
    double[][] w =
        Softmax.fit(new Softmax.Sample(x, new int[] {0, 1}, new double[] {3, 1}), 2, NO_RIDGE);
    assertEquals(Math.log(3), w[0][0], 1e-4);
  }

  @Test
  void twoGroupsGiveTheirOddsRatio() {
    // Group 0: 2 of 8 are class 0; group 1: 6 of 8. Logits ln(1/3) and ln 3, slope 2 ln 3.
    double[][] x = new double[16][];
    int[] y = new int[16];
    for (int i = 0; i < 16; i++) {
      int group = i < 8 ? 0 : 1;
      x[i] = new double[] {1, group};
      y[i] = i % 8 < (group == 0 ? 2 : 6) ? 0 : 1;
    }
    double[][] w = Softmax.fit(new Softmax.Sample(x, y, ones(16)), 2, NO_RIDGE);
    assertEquals(-Math.log(3), w[0][0], 1e-4);
    assertEquals(2 * Math.log(3), w[0][1], 1e-4);
  }

  @Test
  void knownWeightsComeBackFromTheirOwnDraws() {
    double[][] known = {{0.5, 2, -1}, {-0.5, -1, 1.5}, {0, 0, 0}};
    Random random = new Random(8);
    int n = 40_000;
    double[][] x = new double[n][];
    int[] y = new int[n];
    for (int i = 0; i < n; i++) {
      x[i] = new double[] {1, random.nextGaussian(), random.nextGaussian()};
      y[i] = draw(known, x[i], random.nextDouble());
    }
    double[][] w = Softmax.fit(new Softmax.Sample(x, y, ones(n)), 3, NO_RIDGE);
    for (int k = 0; k < 3; k++) {
      // Standard errors are near 0.03 for 40,000 cases (inverse Hessian): four of them.
      assertArrayEquals(known[k], w[k], 0.12);
    }
  }

  private static int draw(double[][] weights, double[] x, double at) {
    double[] p = new double[weights.length];
    double sum = 0;
    for (int k = 0; k < p.length; k++) {
      for (int a = 0; a < x.length; a++) {
        p[k] += weights[k][a] * x[a];
      }
      p[k] = Math.exp(p[k]);
      sum += p[k];
    }
    double below = 0;
    for (int k = 0; k < p.length; k++) {
      below += p[k] / sum;
      if (at < below) {
        return k;
      }
    }
    return p.length - 1;
  }

  @Test
  void theRidgeKeepsWeightsOfWhatIsToldPerfectlyFinite() {
    double[][] x = {{1, -1}, {1, 1}};
    int[] y = {0, 1};
    double[][] w = Softmax.fit(new Softmax.Sample(x, y, ones(2)), 2, 1e-3);
    // At the optimum 1 / (1 + e^w) = ridge * w on each side: w = 4.7 for 1e-3 (by bisection).
    double slope = -w[0][1];
    assertEquals(1 / (1 + Math.exp(slope)), 1e-3 * slope, 1e-5);
    assertTrue(slope > 4 && slope < 6, "slope " + slope);
  }

  @Test
  void aTermThatIsAlwaysZeroGetsNoWeight() {
    double[][] x = {{1, 0}, {1, 0}, {1, 0}};
    double[][] w = Softmax.fit(new Softmax.Sample(x, new int[] {0, 0, 1}, ones(3)), 2, 1e-6);
    assertEquals(0, w[0][1], 1e-9);
    assertEquals(Math.log(2), w[0][0], 1e-4);
  }
}
