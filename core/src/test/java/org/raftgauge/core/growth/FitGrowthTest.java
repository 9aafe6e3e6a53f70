// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.raftgauge.core.growth.FitRule.Outliers;

/** Fits of series made from known curves, all seeded. */
class FitGrowthTest {
  private static final GrowthCurve LOGISTIC =
      new GrowthCurve(CurveModel.LOGISTIC, List.of(450.0, 0.22, 15.0));

  @ParameterizedTest
  @EnumSource(CurveModel.class)
  void aCurveIsFoundAgainFromItsOwnPoints(CurveModel model) {
    GrowthCurve curve =
        switch (model) {
          case EXPONENTIAL -> new GrowthCurve(model, List.of(5.0, 0.13));
          case MONOMOLECULAR -> new GrowthCurve(model, List.of(300.0, 0.1, -0.5));
          case LOGISTIC, GOMPERTZ -> new GrowthCurve(model, List.of(450.0, 0.2, 14.0));
          case RICHARDS -> new GrowthCurve(model, List.of(450.0, 0.25, 16.0, 2.0));
          case EXPOLINEAR -> new GrowthCurve(model, List.of(20.0, 0.3, 10.0));
        };
    double[] dat = days(30, 2);
    double[] area = Arrays.stream(dat).map(curve::areaCm2).toArray();
    FitRule rule = FitRule.defaults().withModels(model);
    Fitted fit = assertInstanceOf(Fitted.class, FitGrowth.of(Series.of(dat, area), rule));
    for (int i = 0; i < curve.parameters().size(); i++) {
      double want = curve.parameters().get(i);
      assertEquals(want, fit.curve().parameters().get(i), 1e-6 * Math.abs(want), model + " " + i);
    }
    assertEquals(1, fit.r2LnArea(), 1e-12);
  }

  /**
   * Growing by a tenth a day to the last photo but one, which is a little low: no sign of an end.
   */
  @Test
  void oneLowLastPhotoIsNotTakenForTheEndOfGrowth() {
    double[] dat = days(14, 1);
    double[] area = Arrays.stream(dat).map(d -> 17 * Math.exp(0.1 * Math.min(d, 13.6))).toArray();
    FitRule rule = FitRule.defaults().withModels(CurveModel.RICHARDS).withOutliers(Outliers.KEEP);
    GrowthFit fit = FitGrowth.of(Series.of(dat, area), rule);
    assertEquals(
        "richards: growth would end from one day to the next",
        assertInstanceOf(NotFitted.class, fit).reason());
  }

  @Test
  void closedPhotosCountAsLowerBounds() {
    // Closed from day 20 on, seen at two thirds of the true area: as bounds they say nothing wrong.
    double[] dat = days(30, 1);
    double[] area = noisy(dat, 0.03, new Random(2));
    boolean[] closed = new boolean[dat.length];
    for (int i = 20; i < dat.length; i++) {
      closed[i] = true;
      area[i] = 0.66 * LOGISTIC.areaCm2(dat[i]);
    }
    FitRule rule = FitRule.defaults().withModels(CurveModel.LOGISTIC);
    Series seen = Series.of(dat, area);
    Fitted asOpen = (Fitted) FitGrowth.of(seen, rule.withOutliers(Outliers.KEEP));
    Fitted asClosed = (Fitted) FitGrowth.of(seen.withClosed(closed), rule);
    assertEquals(11, asClosed.closedPhotos());
    assertEquals(31, asClosed.photos());
    double open = Math.log(asOpen.curve().parameters().get(0) / 450);
    double bound = Math.log(asClosed.curve().parameters().get(0) / 450);
    assertTrue(open < -0.25, "taken as open they pull the asymptote down: " + open);
    assertTrue(Math.abs(bound) < 0.12, "as bounds they do not: " + bound);
  }

  @Test
  void boundsOverTheCurvePullItUp() {
    double[] dat = days(24, 1);
    double[] area = noisy(dat, 0.03, new Random(9));
    FitRule rule = FitRule.defaults().withModels(CurveModel.LOGISTIC);
    Series early = Series.of(dat, area).upTo(16);
    Fitted without = (Fitted) FitGrowth.of(early, rule);
    boolean[] closed = new boolean[dat.length];
    for (int i = 17; i < dat.length; i++) {
      closed[i] = true;
      area[i] = 1.3 * without.curve().areaCm2(dat[i]);
    }
    Fitted with = (Fitted) FitGrowth.of(Series.of(dat, area).withClosed(closed), rule);
    assertTrue(with.curve().areaCm2(24) > 1.15 * without.curve().areaCm2(24));
  }

  @Test
  void theCensoredFitIsWhereTheLikelihoodIsLargest() {
    double[] dat = days(26, 1);
    double[] area = noisy(dat, 0.08, new Random(4));
    boolean[] closed = new boolean[dat.length];
    for (int i = 14; i < dat.length; i += 2) {
      closed[i] = true;
      area[i] *= 0.97;
    }
    FitRule rule =
        new FitRule(FitRule.Scale.LN_AREA, List.of(CurveModel.LOGISTIC), Outliers.KEEP, 0);
    Fitted fit = (Fitted) FitGrowth.of(Series.of(dat, area).withClosed(closed), rule);
    double[] at = fit.curve().working();
    double sigma = fit.working().sigma();
    double best = plainLikelihood(at, sigma, dat, area, closed);
    for (int j = 0; j < at.length; j++) {
      for (double step : new double[] {-1e-3, 1e-3}) {
        double[] moved = at.clone();
        moved[j] += step;
        assertTrue(plainLikelihood(moved, sigma, dat, area, closed) < best, "parameter " + j);
      }
    }
  }

  /** The censored normal log likelihood, written out plainly. */
  private static double plainLikelihood(
      double[] working, double sigma, double[] dat, double[] area, boolean[] closed) {
    GrowthCurve curve = GrowthCurve.ofWorking(CurveModel.LOGISTIC, working);
    NormalDistribution normal = new NormalDistribution();
    double sum = 0;
    for (int i = 0; i < dat.length; i++) {
      double z = (curve.lnArea(dat[i]) - Math.log(area[i])) / sigma;
      sum += closed[i] ? Math.log(normal.cumulativeProbability(z)) : normal.logDensity(z);
    }
    return sum;
  }

  @Test
  void oneBadPhotoIsNamedAndDoesNotMoveTheCurve() {
    double[] dat = days(28, 2);
    double[] area = noisy(dat, 0.03, new Random(6));
    Fitted clean = (Fitted) FitGrowth.of(Series.of(dat, area), FitRule.defaults());
    area[6] *= 0.6;
    Fitted bad = (Fitted) FitGrowth.of(Series.of(dat, area), FitRule.defaults());
    assertEquals(List.of(12.0), bad.discountedDat());
    assertEquals(14, bad.photos());
    assertEquals(clean.curve().lnArea(28), bad.curve().lnArea(28), 0.02);
    Fitted kept =
        (Fitted) FitGrowth.of(Series.of(dat, area), FitRule.defaults().withOutliers(Outliers.KEEP));
    assertTrue(
        Math.abs(kept.curve().lnArea(14) - LOGISTIC.lnArea(14))
            > Math.abs(bad.curve().lnArea(14) - LOGISTIC.lnArea(14)));
  }

  @Test
  void badPhotosAreFoundWhereverTheyLieAndGoodOnesSeldomBlamed() {
    Random random = new Random(10);
    double[] dat = days(28, 2);
    int found = 0;
    int blamed = 0;
    for (int trial = 0; trial < 40; trial++) {
      double[] area = noisy(dat, 0.03, random);
      blamed +=
          ((Fitted) FitGrowth.of(Series.of(dat, area), FitRule.defaults())).discountedDat().size();
      int bad = 2 + random.nextInt(11);
      area[bad] *= random.nextBoolean() ? 0.65 : 1.5;
      List<Double> named =
          ((Fitted) FitGrowth.of(Series.of(dat, area), FitRule.defaults())).discountedDat();
      found += named.contains(dat[bad]) ? 1 : 0;
    }
    assertTrue(found >= 38, "found " + found + " of 40");
    // 600 good photos
    assertTrue(blamed <= 6, "blamed " + blamed + " of 600");
  }

  @Test
  void intervalsOfTheGrowthRateCoverItAsOftenAsTheySay() {
    Random random = new Random(13);
    double[] dat = days(28, 2);
    int covered = 0;
    int trials = 300;
    FitRule rule = FitRule.defaults().withModels(CurveModel.LOGISTIC).withOutliers(Outliers.KEEP);
    for (int trial = 0; trial < trials; trial++) {
      Series series = Series.of(dat, noisy(dat, 0.04, random));
      Estimate rgr = ((Fitted) FitGrowth.of(series, rule)).rgrPerDay(14).orElseThrow();
      double truth = LOGISTIC.rgrPerDay(14);
      covered += rgr.lo95() <= truth && truth <= rgr.hi95() ? 1 : 0;
    }
    // 95 % of 300, four binomial deviations of 3.8
    assertEquals(285, covered, 15);
  }

  @Test
  void moreNoiseGivesWiderIntervals() {
    double[] dat = days(28, 2);
    FitRule rule = FitRule.defaults().withModels(CurveModel.LOGISTIC);
    Fitted quiet = (Fitted) FitGrowth.of(Series.of(dat, noisy(dat, 0.02, new Random(3))), rule);
    Fitted loud = (Fitted) FitGrowth.of(Series.of(dat, noisy(dat, 0.08, new Random(3))), rule);
    for (int i = 0; i < 3; i++) {
      assertTrue(loud.standardError(i) > 2 * quiet.standardError(i), "parameter " + i);
    }
  }

  @Test
  void uncertainPhotosCountLess() {
    double[] dat = days(28, 2);
    double[] area = noisy(dat, 0.02, new Random(5));
    area[7] *= 1.25;
    double[] error = new double[dat.length];
    Arrays.fill(error, 0.02);
    FitRule rule = FitRule.defaults().withModels(CurveModel.LOGISTIC).withOutliers(Outliers.KEEP);
    Fitted trusted = (Fitted) FitGrowth.of(Series.of(dat, area).withErrors(error), rule);
    error[7] = 0.3;
    Fitted doubted = (Fitted) FitGrowth.of(Series.of(dat, area).withErrors(error), rule);
    double truth = LOGISTIC.lnArea(14);
    assertTrue(
        Math.abs(doubted.curve().lnArea(14) - truth)
            < 0.5 * Math.abs(trusted.curve().lnArea(14) - truth));
  }

  @Test
  void fewPhotosGiveOneReasonForAllCurves() {
    NotFitted not =
        assertInstanceOf(
            NotFitted.class,
            FitGrowth.of(
                Series.of(days(2, 1), new double[] {5, 6, 7}),
                FitRule.defaults().withModels(CurveModel.EXPONENTIAL, CurveModel.LOGISTIC)));
    assertEquals("3 photos before the plants closed, where a curve needs at least 5", not.reason());
  }

  @Test
  void equalPhotosOrPhotosOfOneDayEndInAnAnswer() {
    double[] flat = new double[8];
    Arrays.fill(flat, 20);
    GrowthFit same = FitGrowth.of(Series.of(days(7, 1), flat), FitRule.defaults());
    if (same instanceof Fitted fitted) {
      assertEquals(Math.log(20), fitted.curve().lnArea(3), 1e-6);
      assertTrue(fitted.asymptoteCm2().isEmpty() || fitted.asymptoteCm2().getAsDouble() < 21);
    }
    double[] area = {10, 11, 9, 10.5, 10.2, 9.8};
    assertInstanceOf(
        NotFitted.class, FitGrowth.of(Series.of(new double[6], area), FitRule.defaults()));
  }

  @Test
  void aShrinkingPlantHasANegativeGrowthRate() {
    double[] dat = days(10, 1);
    double[] area = Arrays.stream(dat).map(t -> 80 * Math.exp(-0.1 * t)).toArray();
    Fitted fit =
        (Fitted)
            FitGrowth.of(
                Series.of(dat, area), FitRule.defaults().withModels(CurveModel.EXPONENTIAL));
    assertEquals(-0.1, fit.rgrPerDay(10).orElseThrow().value(), 1e-9);
  }

  private static double[] noisy(double[] dat, double sd, Random random) {
    return Arrays.stream(dat)
        .map(t -> LOGISTIC.areaCm2(t) * Math.exp(sd * random.nextGaussian()))
        .toArray();
  }

  private static double[] days(int last, int step) {
    double[] out = new double[last / step + 1];
    Arrays.setAll(out, i -> (double) i * step);
    return out;
  }
}
