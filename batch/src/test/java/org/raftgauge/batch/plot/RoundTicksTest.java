// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.plot.Chart.Scale;

class RoundTicksTest {

  @Test
  void endsOfALinearAxisAreRoundAndHoldAllValues() {
    // A ninth of the span of 20 days is 2.5: the next of 1, 2, 5 is 5.
    assertEquals(new RoundTicks(0, 25), RoundTicks.of(Scale.LINEAR, List.of(4.7444, 24.7)));
    assertEquals(new RoundTicks(0, 100), RoundTicks.of(Scale.LINEAR, List.of(0.0, 100.0)));
  }

  @Test
  void oneValueAloneStandsBetweenRoundEnds() {
    assertEquals(new RoundTicks(4, 6), RoundTicks.of(Scale.LINEAR, List.of(4.7444)));
    assertEquals(new RoundTicks(0, 0.5), RoundTicks.of(Scale.LINEAR, List.of(0.0, Double.NaN)));
  }

  @Test
  void endsOfALogarithmicAxisAreOneTwoOrFiveTimesAPowerOfTen() {
    assertEquals(new RoundTicks(2, 500), RoundTicks.of(Scale.LOG, List.of(5.0, 330.0)));
    assertEquals(new RoundTicks(50, 200), RoundTicks.of(Scale.LOG, List.of(100.0, 101.0)));
  }

  @Test
  void everyDrawnValueLiesWithinTheEnds() {
    Random random = new Random(5);
    for (int i = 0; i < 1000; i++) {
      double a = Math.exp(random.nextGaussian() * 8);
      double b = Math.exp(random.nextGaussian() * 8);
      for (Scale scale : Scale.values()) {
        RoundTicks ends = RoundTicks.of(scale, List.of(a, b));
        assertTrue(ends.min() < ends.max(), a + " " + b);
        double slack = 1e-6 * Math.max(a, b);
        assertTrue(ends.min() <= Math.min(a, b) + slack, a + " " + b + " " + ends);
        assertTrue(ends.max() >= Math.max(a, b) - slack, a + " " + b + " " + ends);
      }
    }
  }

  @Test
  void numbersAreWrittenPlainAndOnlyAtRoundMarks() {
    assertEquals("0.3", RoundTicks.plain(0.1 + 0.2));
    assertEquals("20000", RoundTicks.plain(2e4));
    assertEquals("0.05", RoundTicks.ofLog(0.05));
    assertEquals("500", RoundTicks.ofLog(500));
    assertEquals(" ", RoundTicks.ofLog(30));
  }
}
