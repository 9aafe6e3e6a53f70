// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SpreadTest {

  @Test
  void quantilesLieLinearBetweenOrderStatistics() {
    // Type 7: position (4 - 1) * 0.1 = 0.3 gives 10 + 0.3 * 10; (4 - 1) * 0.5 = 1.5 gives 25.
    List<Double> values = List.of(10.0, 20.0, 30.0, 40.0);

    assertEquals(13, Spread.quantile(values, 0.1).getAsDouble(), 1e-12);
    assertEquals(25, Spread.quantile(values, 0.5).getAsDouble(), 1e-12);
    assertEquals(40, Spread.quantile(values, 1).getAsDouble(), 1e-12);
    assertEquals(OptionalDouble.empty(), Spread.quantile(List.of(), 0.5));
  }

  @Test
  void variationIsSampleDeviationOverMean() {
    // Squares of 2 4 4 4 5 5 7 9 around their mean 5 sum to 32; sqrt(32 / 7) / 5.
    assertEquals(
        Math.sqrt(32.0 / 7) / 5,
        Spread.variation(List.of(2.0, 4.0, 4.0, 4.0, 5.0, 5.0, 7.0, 9.0)).getAsDouble(),
        1e-12);
    assertEquals(OptionalDouble.empty(), Spread.variation(List.of(3.0)));
  }
}
