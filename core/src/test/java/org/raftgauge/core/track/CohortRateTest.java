// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.CropCurve;
import org.raftgauge.core.growth.CurveModel;

class CohortRateTest {

  @Test
  void rateBeginsWithThatOfTheCurve() {
    // The relative growth rate of an exponential is its rate, here 0.07.
    Yardstick book = Yardstick.of(new CropCurve(CropCurve.Model.EXPONENTIAL, List.of(8.0, 0.07)));
    Patch patch = Levels.patch("R", "P", Levels.cohort());
    CohortRate rate = new CohortRate();
    rate.learn(List.of(Levels.tonight(patch, 3, 2, "bench")), Optional.of(book));
    assertEquals(0.07, rate.rate(), 1e-9);
  }

  @Test
  void gapOfFiveDaysTellsNothing() {
    Patch patch = Levels.patch("R", "P", Levels.cohort());
    patch.add(Levels.level(1, 2, "bench"));
    CohortRate rate = new CohortRate();
    rate.learn(List.of(Levels.tonight(patch, 6, 9, "bench")), Optional.empty());
    assertEquals(0.15, rate.rate(), 1e-12);
  }

  @Test
  void rateIsLessSureAfterAGap() {
    CohortRate rate = new CohortRate();
    double before = rate.sd();
    rate.learn(List.of(), Optional.empty());
    assertTrue(rate.sd() > before);
  }

  @Test
  void curvesOfTheBookAreThoseOfTheGrowthPackage() {
    for (CropCurve.Model model : CropCurve.Model.values()) {
      assertEquals(CurveModel.valueOf(model.name()).parameterNames(), model.keys());
    }
  }
}
