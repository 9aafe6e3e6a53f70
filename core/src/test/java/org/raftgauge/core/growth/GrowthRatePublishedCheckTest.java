// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.FitRule.Outliers;
import org.raftgauge.core.growth.FitRule.Scale;

/** Relative growth rates against the project's reference values, sections C2 and C5. */
@Tag("published")
class GrowthRatePublishedCheckTest {
  @Test
  void rgrBetweenHarvestsIsTheMeanOfLogs() {
    // Worked example after Hoffmann and Poorter 2002, by R: 0.238135696 (0.02656589855), 7 days
    double[] first = logs(2.1, 2.4, 1.9, 3.0, 2.6);
    double[] second = logs(9.8, 14.5, 7.9, 21.0, 13.2);
    Estimate rate = RgrBetween.of(first, second, 7);
    assertEquals(0.238135696, rate.value(), 5e-10);
    assertEquals(0.02656589855, rate.standardError(), 5e-11);
    // Welch's degrees of freedom lie between 4 and 8: t between 2.776 and 2.306 (tables)
    double t = (rate.hi95() - rate.value()) / rate.standardError();
    assertTrue(t > 2.306 && t < 2.776, "t " + t);
  }

  @Test
  void huntsRateOfTwoSizesComesOut() {
    // (ln 205.3 - ln 53.0) / 9 = 0.1504644901
    double[] first = logs(53, 53);
    assertEquals(0.1504644901, RgrBetween.of(first, logs(205.3, 205.3), 9).value(), 5e-11);
    assertEquals(0, RgrBetween.of(first, logs(205.3, 205.3), 9).standardError(), 1e-12);
  }

  @Test
  void theEarlyRateOfTheWorkedSiteIsItsLogLinearSlope() {
    // First five points: slope 0.1652470999 (0.001709981529), intercept 2.4965837418 (SciPy)
    double[] dat = {0, 3, 6, 9, 12};
    double[] area = {12.1, 19.8, 33.5, 53.0, 88.2};
    FitRule rule = new FitRule(Scale.LN_AREA, List.of(CurveModel.EXPONENTIAL), Outliers.KEEP, 0);
    Fitted fit = assertInstanceOf(Fitted.class, FitGrowth.of(Series.of(dat, area), rule));
    Estimate rate = fit.rgrPerDay(12).orElseThrow();
    assertEquals(0.1652470999, rate.value(), 5e-11);
    assertEquals(0.001709981529, rate.standardError(), 5e-13);
    assertEquals(2.4965837418, Math.log(fit.curve().parameters().get(0)), 5e-11);
    assertEquals(0.9996788581, fit.r2LnArea(), 5e-11);
  }

  @Test
  void intervalsBetweenHarvestsCoverAsOftenAsTheySay() {
    Random random = new Random(31);
    int covered = 0;
    for (int trial = 0; trial < 1000; trial++) {
      double[] first = random.doubles(6).map(v -> 1 + 0.2 * random.nextGaussian()).toArray();
      double[] second = random.doubles(9).map(v -> 3 + 0.5 * random.nextGaussian()).toArray();
      Estimate rate = RgrBetween.of(first, second, 8);
      covered += rate.lo95() <= 0.25 && rate.hi95() >= 0.25 ? 1 : 0;
    }
    // 95 % of 1000, four binomial deviations of 6.9
    assertEquals(950, covered, 28);
  }

  @Test
  void onePlantAHarvestIsRefused() {
    assertEquals(
        "two sizes a harvest and days > 0 are needed, got 1, 2, 7.0",
        assertThrows(
                IllegalArgumentException.class,
                () -> RgrBetween.of(new double[1], new double[2], 7))
            .getMessage());
  }

  private static double[] logs(double... sizes) {
    return Arrays.stream(sizes).map(Math::log).toArray();
  }
}
