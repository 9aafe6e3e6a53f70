// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Control charts against the worked examples of the NIST/SEMATECH e-Handbook. */
@Tag("published")
class ChartsPublishedCheckTest {
  // e-Handbook 6.3.2.4: target 50, s = 2.0539, weight 0.3, k = 3
  private static final double[] EWMA_X = {
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2,
    52.6, 52.4, 53.6, 52.1
  };
  // The averages as printed there, four decimals
  private static final double[] EWMA_Z = {
    50.6, 49.52, 50.564, 50.1848, 50.1594, 49.2116, 49.7481, 49.8537, 50.2576, 50.3303, 50.1112,
    49.3578, 49.5205, 50.0543, 49.3780, 49.9246, 50.7272, 51.2291, 51.9403, 51.9882
  };
  // e-Handbook 6.3.2.3: 20 subgroup means, target 325, k = 0.3175, h = 4.1959
  private static final double[] CUSUM_X = {
    324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
    324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
  };

  @Test
  void ewmaIsThatOfTheHandbook() {
    EwmaRule rule = new EwmaRule(0.3, 3);
    Ewma chart = rule.start(50);
    for (int i = 0; i < EWMA_X.length; i++) {
      chart = chart.next(EWMA_X[i]);
      assertEquals(EWMA_Z[i], chart.average(), 5.1e-5, "value " + (i + 1));
      assertFalse(chart.isHigh(2.0539) || chart.isLow(2.0539), "no signal at " + (i + 1));
    }
    // Printed limits 52.5884 and 47.4115 are those of many values
    assertEquals(2.5884, rule.halfWidth(1000, 2.0539), 5e-5);
    // Exact half widths of the first values: L s w = 1.84851 at i = 1; R for 2, 3, 20
    assertEquals(1.84851, rule.halfWidth(1, 2.0539), 1e-10);
    assertEquals(2.256394012, rule.halfWidth(2, 2.0539), 1e-9);
    assertEquals(2.431405571, rule.halfWidth(3, 2.0539), 1e-9);
    assertEquals(2.588430914, rule.halfWidth(20, 2.0539), 1e-9);
  }

  @Test
  void ewmaSignalsEitherWay() {
    EwmaRule rule = new EwmaRule(0.3, 3);
    // First average 50 +- 0.3 * 7 = +-2.1, limit 1.84851 (above)
    assertTrue(rule.start(50).next(57).isHigh(2.0539));
    assertTrue(rule.start(50).next(43).isLow(2.0539));
    assertFalse(rule.start(50).next(43).isHigh(2.0539));
  }

  @Test
  void cusumIsThatOfTheHandbook() {
    Cusum sums = Cusum.start(325, 0.3175);
    double lowest = 0;
    int firstSignal = 0;
    for (int i = 0; i < CUSUM_X.length; i++) {
      sums = sums.next(CUSUM_X[i]);
      lowest = Math.max(lowest, sums.low());
      if (firstSignal == 0 && sums.isHigh(4.1959)) {
        firstSignal = i + 1;
        assertEquals(4.94, sums.high(), 1e-9);
      }
      assertFalse(sums.isLow(4.1959));
    }
    assertEquals(14, firstSignal);
    assertEquals(19.035, sums.high(), 1e-9);
    assertEquals(0.715, lowest, 1e-9);
  }

  @Test
  void runLengthsAreThoseOfTheTables() {
    // In control, k = 0.5, h = 4: 167.7 (Markov chain; Montgomery prints 168). One sigma: 8.38.
    assertEquals(167.7, meanRunLength(0, 4000), 167.7 * 4 / Math.sqrt(4000));
    assertEquals(8.383, meanRunLength(1, 4000), 0.3);
  }

  private static double meanRunLength(double shift, int runs) {
    Random random = new Random(5);
    double total = 0;
    for (int run = 0; run < runs; run++) {
      Cusum sums = Cusum.start(0, 0.5);
      while (!sums.isHigh(4) && !sums.isLow(4)) {
        sums = sums.next(shift + random.nextGaussian());
        total++;
      }
    }
    return total / runs;
  }

  @Test
  void nonsenseIsRefused() {
    assertEquals(
        "weight must be in (0, 1], got 0.0",
        assertThrows(IllegalArgumentException.class, () -> new EwmaRule(0, 3)).getMessage());
    assertEquals(
        "widthSigmas must be > 0, got -1.0",
        assertThrows(IllegalArgumentException.class, () -> new EwmaRule(0.2, -1)).getMessage());
    assertEquals(
        "slack, high and low must be >= 0, got -0.5, 0.0, 0.0",
        assertThrows(IllegalArgumentException.class, () -> Cusum.start(0, -0.5)).getMessage());
  }
}
