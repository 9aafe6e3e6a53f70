// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The network's fit on cases whose answer is known. */
class FitNetworkTest {
  private static final int CASES = 2000;

  /** Cases drawn evenly from a square of -1..1. */
  private static float[][] square() {
    Random random = new Random(1);
    float[][] x = new float[CASES][];
    for (int i = 0; i < CASES; i++) {
      x[i] = new float[] {2 * random.nextFloat() - 1, 2 * random.nextFloat() - 1};
    }
    return x;
  }

  private static double score(FitNetwork network, float[] row) {
    double[] output = network.output();
    double score = output[output.length - 1];
    double[][] units = network.units();
    for (int j = 0; j < units.length; j++) {
      double sum = units[j][0] * row[0] + units[j][1] * row[1] + units[j][2];
      score += output[j] * Math.max(0, sum);
    }
    return score;
  }

  private static double[] even() {
    double[] weight = new double[CASES];
    Arrays.fill(weight, 0.5);
    return weight;
  }

  private static FitNetwork fit(float[][] x, boolean[] leaf, double[] weight) {
    return FitNetwork.to(Cases.of(x, leaf, weight), new FitNetwork.Size(24, 8000, 1e-4), 20_263);
  }

  @Test
  void whatNoPlaneTellsApartIsTold() {
    float[][] x = square();
    boolean[] leaf = new boolean[CASES];
    for (int i = 0; i < CASES; i++) {
      leaf[i] = x[i][0] * x[i][1] > 0;
    }
    FitNetwork network = fit(x, leaf, even());
    int right = 0;
    for (int i = 0; i < CASES; i++) {
      right += score(network, x[i]) > 0 == leaf[i] ? 1 : 0;
    }
    // A plane gets half of the four quarters right; what errs here lies along their borders.
    assertTrue(right > 0.97 * CASES, right + " of " + CASES);
  }

  @Test
  void scoresAreLogOddsOfWhatWeightsSay() {
    float[][] x = square();
    boolean[] leaf = new boolean[CASES];
    double[] weight = new double[CASES];
    for (int i = 0; i < CASES; i++) {
      x[i] = new float[] {0.5f, -0.5f};
      leaf[i] = i % 2 == 0;
      weight[i] = leaf[i] ? 3 : 1;
    }
    // Three to one: ln 3.
    assertEquals(Math.log(3), score(fit(x, leaf, weight), x[0]), 0.05);
  }

  @Test
  void whatIsKnownIsNotTaughtAgain() {
    float[][] x = square();
    boolean[] leaf = new boolean[CASES];
    float[] weight = new float[CASES];
    float[] known = new float[CASES];
    for (int i = 0; i < CASES; i++) {
      leaf[i] = i % 4 > 0;
      weight[i] = 1;
      known[i] = (float) Math.log(3);
    }
    // Three to one is known: an even answer is left to teach, 0 wherever a case lies.
    FitNetwork network =
        FitNetwork.to(
            new Cases(x, leaf, weight, known), new FitNetwork.Size(4, 8000, 1e-2), 20_263);
    assertEquals(0, score(network, new float[] {0.5f, -0.5f}), 0.1);
    assertEquals(0, score(network, new float[] {-0.5f, 0.5f}), 0.1);
  }

  @Test
  void theSameCasesGiveTheSameNetwork() {
    float[][] x = square();
    boolean[] leaf = new boolean[CASES];
    leaf[7] = true;
    assertArrayEquals(fit(x, leaf, even()).output(), fit(x, leaf, even()).output());
  }
}
