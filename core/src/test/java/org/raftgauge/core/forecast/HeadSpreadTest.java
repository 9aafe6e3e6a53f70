// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class HeadSpreadTest {

  @Test
  void halfOfEachHeadIsUnderItsMedianAndTheWholeIsTheHeadsThatStand() {
    HeadSpread two =
        new HeadSpread(
            List.of(new HeadSpread.Head(100, 0.2, 1), new HeadSpread.Head(100, 0.4, 0.5)));
    // A lognormal has half its mass under its median; 1 + 0.5 heads stand.
    assertEquals(0.75, two.expected(0, 100), 1e-6);
    assertEquals(1.5, two.expected(0, 1e6), 1e-6);
    assertEquals(1.5, two.expected(0, 80) + two.expected(80, 1e6), 1e-6);
  }

  @Test
  void oneStandardDeviationHoldsTwoThirds() {
    HeadSpread one = new HeadSpread(List.of(new HeadSpread.Head(120, 0.1, 1)));
    // Normal distribution, Abramowitz and Stegun 1964, table 26.1: P(|z| < 1) = 0.68268949.
    assertEquals(0.68268949, one.expected(120 * Math.exp(-0.1), 120 * Math.exp(0.1)), 2e-7);
  }
}
