// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Weighings from which no grader is made. */
class RefusedWeighingsTest {
  private static final String NO_CLOSED =
      "; 0 weighings of closed sites; at least 8 are needed before closed sites can be weighed";

  /** Ten plants of 50, 100 .. 500 cm2. */
  private static List<Weighed> plants(String variety, ToDoubleFunction<Double> gOfArea) {
    List<Weighed> plants = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      double area = 50 * i;
      plants.add(
          Plants.plant(
              i + 1, Traits.ofArea(variety, area), Regime.OPEN, gOfArea.applyAsDouble(area)));
    }
    return plants;
  }

  private static GraderResult fit(List<Weighed> plants) {
    return FitGrader.fit("basil", plants, FitRule.defaults(), Plants.ORIGIN);
  }

  @Test
  void weightsThatAreAllAlikeAreRefused() {
    assertEquals(
        new GraderResult.NotFitted(
            "the 10 weighings of open sites all say 50.0 g, which tells nothing of how weight goes"
                + " with size; mend fresh_weight_g in weighings.csv, or weigh plants over the whole"
                + " range of sizes (see grader picks)"
                + NO_CLOSED),
        fit(plants("", area -> 50)));
  }
}
