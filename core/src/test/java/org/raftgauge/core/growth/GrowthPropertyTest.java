// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What must hold of every growth rate and curve: series drawn with a seed. */
class GrowthPropertyTest {
  private final Random random = new Random(8_303);

  /** ln(k a2) - ln(k a1) = ln a2 - ln a1: the unit of area cannot matter. */
  @Test
  void aRateIsTheSameInEveryUnitOfArea() {
    for (int n = 0; n < 500; n++) {
      double[] first = lnSizes(3, 0);
      double[] second = lnSizes(5, 1);
      double shift = between(-3, 3);
      Estimate rate = RgrBetween.of(first, second, 4);
      Estimate shifted = RgrBetween.of(plus(first, shift), plus(second, shift), 4);
      assertEquals(rate.value(), shifted.value(), 1e-12, "case " + n);
      assertEquals(rate.standardError(), shifted.standardError(), 1e-12, "case " + n);
    }
  }

  @Test
  void aRateBackwardsIsTheRateWithItsSignTurned() {
    for (int n = 0; n < 500; n++) {
      double[] first = lnSizes(4, 0);
      double[] second = lnSizes(6, 1);
      Estimate on = RgrBetween.of(first, second, 3);
      Estimate back = RgrBetween.of(second, first, 3);
      assertEquals(on.value(), -back.value(), 1e-12, "case " + n);
      assertEquals(on.lo95(), -back.hi95(), 1e-9, "case " + n);
    }
  }

  /** Plain counting of intervals that hold the true rate: 95 % of 2000, binomial sd 0.5 %. */
  @Test
  void ninetyFiveIntervalsOfAHundredHoldTheTrueRate() {
    int held = 0;
    for (int n = 0; n < 2000; n++) {
      Estimate rate = RgrBetween.of(normal(5, 1.0, 0.2), normal(7, 1.8, 0.35), 4);
      held += rate.lo95() <= 0.2 && 0.2 <= rate.hi95() ? 1 : 0;
    }
    assertEquals(0.95, held / 2000.0, 0.02);
  }

  @Test
  void aFittedCurveHoldsItsEstimateWithinItsIntervalAndGrows() {
    for (int n = 0; n < 40; n++) {
      double[] dat = days(8 + random.nextInt(12));
      double rate = between(0.08, 0.3);
      double[] area = sizes(dat, rate, 0.03);
      FitRule rule = FitRule.defaults().withModels(CurveModel.EXPONENTIAL);
      Fitted fit = (Fitted) FitGrowth.of(Series.of(dat, area), rule);
      Estimate found = fit.parameter(1);
      assertTrue(found.lo95() < found.value() && found.value() < found.hi95(), "case " + n);
      assertEquals(rate, found.value(), 6 * found.standardError(), "case " + n);
      double middle = dat[dat.length / 2];
      assertEquals(found.value(), fit.rgrPerDay(middle).orElseThrow().value(), 1e-9, "case " + n);
    }
  }

  @Test
  void aFitIsTheSameInEveryUnitOfArea() {
    for (int n = 0; n < 25; n++) {
      double[] dat = days(12);
      double[] area = sizes(dat, between(0.1, 0.25), 0.02);
      double[] inches = Arrays.stream(area).map(a -> a / 6.4516).toArray();
      FitRule rule = FitRule.defaults().withModels(CurveModel.EXPONENTIAL);
      Fitted one = (Fitted) FitGrowth.of(Series.of(dat, area), rule);
      Fitted other = (Fitted) FitGrowth.of(Series.of(dat, inches), rule);
      assertEquals(one.parameter(1).value(), other.parameter(1).value(), 1e-6, "case " + n);
      assertEquals(one.standardError(1), other.standardError(1), 1e-6, "case " + n);
    }
  }

  private double[] lnSizes(int plants, double middle) {
    return normal(plants, middle, 0.3);
  }

  private double[] normal(int plants, double middle, double sd) {
    double[] sizes = new double[plants];
    for (int i = 0; i < plants; i++) {
      sizes[i] = middle + sd * random.nextGaussian();
    }
    return sizes;
  }

  private double[] days(int count) {
    double[] dat = new double[count];
    for (int i = 0; i < count; i++) {
      dat[i] = (i == 0 ? 1 : dat[i - 1]) + between(0.8, 2);
    }
    return dat;
  }

  private double[] sizes(double[] dat, double rate, double scatter) {
    return Arrays.stream(dat)
        .map(t -> 5 * Math.exp(rate * t + scatter * random.nextGaussian()))
        .toArray();
  }

  private static double[] plus(double[] values, double shift) {
    return Arrays.stream(values).map(v -> v + shift).toArray();
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
