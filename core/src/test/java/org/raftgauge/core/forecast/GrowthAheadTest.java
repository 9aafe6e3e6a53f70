// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

class GrowthAheadTest {
  private static double curve(double dat) {
    return Math.log(GrowingRafts.LOGISTIC.applyAsDouble(dat));
  }

  /** Plants of a cycle that grow on ln area f(t), each by some 20 % larger or smaller for good. */
  private static List<Series> plants(DoubleUnaryOperator f, int from, int last) {
    Random random = new Random(5);
    List<Series> plants = new ArrayList<>();
    for (int p = 0; p < 12; p++) {
      double own = 0.2 * random.nextGaussian();
      int n = (last - from) / 2 + 1;
      double[] dat = new double[n];
      double[] area = new double[n];
      for (int i = 0; i < n; i++) {
        dat[i] = from + 2 * i;
        area[i] = Math.exp(f.applyAsDouble(dat[i]) + own);
      }
      plants.add(Series.of(dat, area).withClosed(new boolean[n]));
    }
    return plants;
  }

  private static CommonPath way(DoubleUnaryOperator f, int last) {
    return CommonPath.of(plants(f, 4, last));
  }

  @Test
  void aWayHasTheIncrementsOfItsPlantsWhateverTheirSizes() {
    CommonPath way = way(GrowthAheadTest::curve, 24);

    assertEquals(11, way.size());
    for (int i = 1; i < way.size(); i++) {
      double grown = curve(way.age(i)) - curve(way.age(i - 1));
      assertEquals(grown, way.lnArea(i) - way.lnArea(i - 1), 1e-9);
    }
  }

  @Test
  void plantsThatCloseOrCollapseDoNotBendTheWay() {
    List<Series> plants = new ArrayList<>();
    List<Series> all = plants(GrowthAheadTest::curve, 4, 24);
    for (int p = 0; p < all.size(); p++) {
      Series s = all.get(p);
      double[] dat = new double[s.size()];
      double[] area = new double[s.size()];
      boolean[] closed = new boolean[s.size()];
      for (int i = 0; i < s.size(); i++) {
        dat[i] = s.dat(i);
        // Four plants close from day 18; one collapses on day 14.
        closed[i] = p < 4 && dat[i] >= 18;
        area[i] = p == 5 && dat[i] >= 14 ? 5 : closed[i] ? 150 : s.areaCm2(i);
      }
      plants.add(Series.of(dat, area).withClosed(closed));
    }
    CommonPath way = CommonPath.of(plants);

    double grown = curve(24) - curve(4);
    assertEquals(grown, way.lnArea(way.size() - 1) - way.lnArea(0), 0.02);
  }

  @Test
  void growthGoesOnAsThePastCyclesDid() {
    List<CommonPath> past =
        List.of(
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34));
    GrowthAhead ahead = GrowthAhead.of(past, way(GrowthAheadTest::curve, 20), 15).orElseThrow();

    for (int to : new int[] {22, 25, 30}) {
      double grown = curve(to) - curve(20);
      Forecast told = ahead.sinceLast(to, false);
      assertEquals(grown, told.mean(), 0.01, "to day " + to);
      assertTrue(told.sd() > 0.001 && told.sd() < 0.05, "sd " + told.sd());
    }
    assertTrue(ahead.sinceLast(30, false).sd() > ahead.sinceLast(22, false).sd());
  }

  @Test
  void aCycleThatBeganLateIsTakenForItsOwnAge() {
    // Tonight's plants are where the others were a day and a half before: they grow faster still.
    DoubleUnaryOperator late = t -> curve(t - 1.5);
    List<CommonPath> past =
        List.of(
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34));
    GrowthAhead ahead = GrowthAhead.of(past, way(late, 24), 15).orElseThrow();

    double grown = late.applyAsDouble(30) - late.applyAsDouble(24);
    double usual = curve(30) - curve(24);
    assertEquals(grown, ahead.sinceLast(30, false).mean(), 0.25 * (grown - usual));
  }

  @Test
  void cyclesThatDifferMakeTheForecastLessSure() {
    List<CommonPath> alike =
        List.of(
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34),
            way(GrowthAheadTest::curve, 34));
    List<CommonPath> different =
        List.of(
            way(t -> curve(t + 2) + 0.02 * Math.sin(t), 34),
            way(t -> curve(t - 2) + 0.03 * Math.sin(1.3 * t), 34),
            way(t -> curve(1.05 * t) + 0.03 * Math.cos(0.9 * t), 34));

    double sure =
        GrowthAhead.of(alike, way(GrowthAheadTest::curve, 20), 15)
            .orElseThrow()
            .sinceLast(25, false)
            .sd();
    double less =
        GrowthAhead.of(different, way(GrowthAheadTest::curve, 20), 15)
            .orElseThrow()
            .sinceLast(25, false)
            .sd();
    assertTrue(less > 1.5 * sure, sure + " and " + less);
  }

  @Test
  void withoutAPastCycleNothingIsCarriedOn() {
    assertEquals(Optional.empty(), GrowthAhead.of(List.of(), way(GrowthAheadTest::curve, 20), 15));
  }

  @Test
  void weatherOfIndependentDaysAddsUpInSquares() {
    GrowthCurve line = new GrowthCurve(CurveModel.EXPONENTIAL, List.of(10.0, 0.1));
    WeatherWalk walk = new WeatherWalk(line, 0, 20);

    // Growth is 0.1 each day: up to day 5 five times 0.01; shared by days 5 and 9 the same.
    assertEquals(0.05, walk.covariance(5, 5), 1e-12);
    assertEquals(0.05, walk.covariance(5, 9), 1e-12);
    assertEquals(0.03, walk.ahead(10, 3), 1e-12);
  }

  @Test
  void weatherThatStaysAddsUpFaster() {
    GrowthCurve line = new GrowthCurve(CurveModel.EXPONENTIAL, List.of(10.0, 0.1));
    WeatherWalk walk = new WeatherWalk(line, 0.6, 20);

    // Two days: 0.01 (1 + 1 + 2 * 0.6) in all; ahead of a known day, of the innovations e1, e2 of
    // variance 1 - 0.36: (1.6 e1 + e2), 0.64 * (2.56 + 1) * 0.01.
    assertEquals(0.032, walk.covariance(2, 2), 1e-12);
    assertEquals(0.64 * 3.56 * 0.01, walk.ahead(10, 2), 1e-12);
  }

  /** The past cycles' way, seen open to day 22 and weighed on day 34 by a line off by so much. */
  private static CommonPath weighed(double lineOff) {
    CommonPath seen = way(GrowthAheadTest::curve, 22);
    double typical = seen.lnArea(seen.size() - 1) + curve(34) - curve(22);
    return seen.with(List.of(new ScalePoint(34, typical + lineOff, 1e-4)));
  }

  private static GrowthAhead closed(List<CommonPath> past) {
    return GrowthAhead.of(past, way(GrowthAheadTest::curve, 20), 15).orElseThrow();
  }

  @Test
  void closedPlantsWeighWhatThoseOfPastCyclesWeighedAtTheirAge() {
    // However far the line is off, tonight's plants, which went the same way, have the same weight.
    for (double lineOff : new double[] {0, 0.2, -0.2}) {
      CommonPath past = weighed(lineOff);
      GrowthAhead ahead = closed(List.of(past, past, past));

      assertTrue(ahead.weighed());
      assertEquals(past.weighed().get(0).lnArea(), ahead.lnArea(34, true), 0.02, "off " + lineOff);
      double grown = ahead.lnArea(34, true) - ahead.lnArea(30, true);
      assertEquals(curve(34) - curve(30), grown, 0.02, "off " + lineOff);
    }
  }

  @Test
  void anAreaStaysAnAreaHoweverFarTheLineOfWeightsIsOff() {
    // The curve's own growth to day 34, put in; a line off by 0.2 must not become leaf.
    for (double lineOff : new double[] {0.2, -0.2}) {
      CommonPath past = weighed(lineOff);
      GrowthAhead ahead = closed(List.of(past, past, past));
      double grown = ahead.lnArea(34, false) - ahead.lnArea(20, false);

      assertEquals(curve(34) - curve(20), grown, 0.05, "off " + lineOff);
    }
  }

  @Test
  void theMoreCyclesWereWeighedTheSurerTheWeight() {
    CommonPath blind = way(GrowthAheadTest::curve, 22);
    CommonPath past = weighed(0);

    double three = closed(List.of(past, past, past)).sinceLast(34, true).sd();
    double one = closed(List.of(past, blind, blind)).sinceLast(34, true).sd();
    assertTrue(three < 0.9 * one, three + " against " + one);
  }

  @Test
  void aPlantStandsToTheOthersAsOnItsLastOpenEvenings() {
    CommonPath way = way(GrowthAheadTest::curve, 24);
    double[] dat = {4, 8, 12, 14, 16, 18, 20};
    double[] area = new double[dat.length];
    boolean[] closed = {false, false, false, false, false, false, true};
    double typical = way.lnArea(0) - curve(4);
    for (int i = 0; i < dat.length; i++) {
      // It fell back by a tenth after day 4, and what it shows once closed does not count.
      double off = dat[i] == 4 ? 0.3 : dat[i] == 20 ? -0.5 : 0.2;
      area[i] = Math.exp(curve(dat[i]) + typical + off);
    }

    assertEquals(0.2, way.own(Series.of(dat, area).withClosed(closed)).orElseThrow(), 1e-9);
  }
}
