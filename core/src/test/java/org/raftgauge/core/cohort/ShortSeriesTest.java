// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.FitGrowth;
import org.raftgauge.core.growth.FitRule;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/** Short series shrunk to their cohort, on simulated cohorts with known truth, all seeded. */
@Tag("simulation")
class ShortSeriesTest {
  private static final int TARGET = 28;

  private enum Maker {
    RICHARDS,
    LIGHT;

    SimulatedCohort make(int plants, long seed) {
      return this == RICHARDS
          ? SimulatedCohort.richards(plants, seed)
          : SimulatedCohort.light(plants, seed);
    }
  }

  /** Sums of squared errors at day 28, and how often intervals cover. */
  private static final class Score {
    private double shrunk;
    private double bare;
    private double own;
    private int ownFits;
    private int covered;
    private int n;
  }

  @ParameterizedTest(name = "{0} to day {1}")
  @CsvSource({"RICHARDS, 4", "RICHARDS, 7", "RICHARDS, 14", "LIGHT, 4", "LIGHT, 7", "LIGHT, 14"})
  void forecastsBeatTheOwnFitAndTheBareCohortAndTheirIntervalsCover(Maker maker, int last) {
    CohortPrior prior = FitCohort.priorOf(history(maker), CohortRule.defaults()).orElseThrow();
    Score score = new Score();
    for (int rep = 0; rep < 5; rep++) {
      SimulatedCohort tonight = maker.make(60, 100 + 7 * rep + last);
      List<Series> seen = tonight.photos.stream().map(s -> s.upTo(last)).toList();
      CohortCurve cohort = FitCohort.of(seen, CohortRule.defaults(), prior);
      for (int i = 0; i < seen.size(); i++) {
        judge(score, cohort, seen.get(i), Math.log(tonight.truth.get(i)[TARGET]), i < 4);
      }
    }
    double shrunk = Math.sqrt(score.shrunk / score.n);
    double bare = Math.sqrt(score.bare / score.n);
    double own = Math.sqrt(score.own / Math.max(1, score.ownFits));
    String figures =
        String.format(
            "%s day %d: shrunk %.3f, own %.3f (%d fits), bare %.3f, covered %.3f",
            maker, last, shrunk, own, score.ownFits, bare, score.covered / (double) score.n);
    assertTrue(score.ownFits == 0 || shrunk <= own / 2, figures);
    assertTrue(shrunk < 0.9 * bare, figures);
    // Plants of a cohort share its error, so five cohorts bind coverage loosely.
    assertTrue(score.covered >= 0.9 * score.n, figures);
  }

  private static void judge(
      Score score, CohortCurve cohort, Series seen, double truth, boolean alsoOwn) {
    Forecast forecast = cohort.forPlant(seen).lnArea(TARGET);
    score.shrunk += Math.pow(forecast.mean() - truth, 2);
    score.bare += Math.pow(cohort.lnArea(TARGET).mean() - truth, 2);
    score.covered += forecast.lo95() <= truth && truth <= forecast.hi95() ? 1 : 0;
    score.n++;
    if (alsoOwn && FitGrowth.of(seen, FitRule.defaults()) instanceof Fitted own) {
      score.own += Math.pow(own.curve().lnArea(TARGET) - truth, 2);
      score.ownFits++;
    }
  }

  @ParameterizedTest
  @CsvSource({"RICHARDS", "LIGHT"})
  void pastPlantsInTheSameListServeAsWell(Maker maker) {
    List<Series> all = new ArrayList<>();
    history(maker).forEach(all::addAll);
    SimulatedCohort tonight = maker.make(60, 77);
    List<Series> seen = tonight.photos.stream().map(s -> s.upTo(10)).toList();
    all.addAll(seen);
    CohortCurve cohort =
        assertInstanceOf(CohortCurve.class, FitCohort.of(all, CohortRule.defaults()));
    Score score = new Score();
    for (int i = 0; i < seen.size(); i++) {
      judge(score, cohort, seen.get(i), Math.log(tonight.truth.get(i)[TARGET]), false);
    }
    assertTrue(score.shrunk < 0.8 * score.bare);
    assertTrue(score.covered >= 54, "covered " + score.covered + " of 60");
  }

  @Test
  void withoutHistoryTheIntervalSaysHowLittleIsKnown() {
    int covered = 0;
    for (int rep = 0; rep < 5; rep++) {
      SimulatedCohort tonight = Maker.RICHARDS.make(60, 40 + rep);
      List<Series> seen = tonight.photos.stream().map(s -> s.upTo(12)).toList();
      CohortFit fit = FitCohort.of(seen, CohortRule.defaults());
      if (fit instanceof NoCohortCurve none) {
        assertTrue(none.reason().startsWith("the typical plant: "), none.reason());
        covered++;
        continue;
      }
      CohortCurve cohort = (CohortCurve) fit;
      Forecast forecast = cohort.forPlant(seen.get(0)).lnArea(TARGET);
      double truth = Math.log(tonight.truth.get(0)[TARGET]);
      covered += forecast.lo95() <= truth && truth <= forecast.hi95() ? 1 : 0;
    }
    assertTrue(covered >= 4, "covered " + covered + " of 5");
  }

  @Test
  void theFirstEveningHasACurve() {
    CohortPrior prior = prior();
    SimulatedCohort tonight = Maker.RICHARDS.make(30, 5);
    List<Series> seen = tonight.photos.stream().map(s -> s.upTo(0)).toList();
    CohortCurve cohort = FitCohort.of(seen, CohortRule.defaults(), prior);
    Forecast forecast = cohort.forPlant(seen.get(3)).lnArea(TARGET);
    assertTrue(forecast.sd() > 0.05 && forecast.sd() < 0.5, "sd " + forecast.sd());
    CohortCurve none = FitCohort.of(List.of(), CohortRule.defaults(), prior);
    assertEquals(0, none.plants());
    assertTrue(none.lnArea(TARGET).sd() >= forecast.sd());
  }

  @Test
  void aPlantWithoutPhotosIsTheCohorts() {
    CohortCurve cohort = tonight(14);
    Series none = Series.of(new double[0], new double[0]);
    assertEquals(cohort.lnArea(20).mean(), cohort.forPlant(none).lnArea(20).mean(), 1e-12);
    assertEquals(cohort.rgrPerDay(20), cohort.forPlant(none).rgrPerDay(20).mean(), 1e-12);
  }

  @Test
  void everyPhotoNarrowsTheForecast() {
    CohortCurve cohort = tonight(14);
    Series plant = Maker.RICHARDS.make(60, 21).photos.get(7);
    double last = Double.POSITIVE_INFINITY;
    for (int day = 0; day <= 14; day++) {
      double sd = cohort.forPlant(plant.upTo(day)).lnArea(TARGET).sd();
      assertTrue(sd < last, "day " + day);
      last = sd;
    }
  }

  @Test
  void innovationsOfHealthyPlantsAreStandardNormal() {
    CohortCurve cohort = tonight(24);
    double squares = 0;
    double products = 0;
    int n = 0;
    for (Series plant : Maker.RICHARDS.make(60, 21).photos) {
      List<Innovation> innovations = cohort.forPlant(plant.upTo(24)).innovations();
      assertEquals(25, innovations.size());
      for (int i = 2; i < innovations.size(); i++) {
        squares += innovations.get(i).z() * innovations.get(i).z();
        products += innovations.get(i).z() * innovations.get(i - 1).z();
        n++;
      }
    }
    // 1380 photos; common weather keeps them from being quite independent
    assertEquals(1, Math.sqrt(squares / n), 0.15);
    assertEquals(0, products / n, 0.15);
  }

  @Test
  void oneBadPhotoHardlyMovesThePlantAndIsNamed() {
    CohortCurve cohort = tonight(20);
    Series plant = Maker.RICHARDS.make(60, 21).photos.get(11).upTo(16);
    double[] dat = new double[17];
    double[] area = new double[17];
    double[] error = new double[17];
    for (int i = 0; i < 17; i++) {
      dat[i] = plant.dat(i);
      area[i] = plant.areaCm2(i) * (i == 12 ? 0.5 : 1);
      error[i] = 0.03;
    }
    PlantCurve bad = cohort.forPlant(Series.of(dat, area).withErrors(error));
    assertEquals(List.of(12.0), bad.discountedDat());
    Forecast clean = cohort.forPlant(plant).lnArea(TARGET);
    assertEquals(clean.mean(), bad.lnArea(TARGET).mean(), 0.04);
    assertEquals(List.of(), cohort.forPlant(plant).discountedDat());
  }

  @Test
  void aStalledPlantShowsInItsInnovations() {
    CohortCurve cohort = tonight(20);
    Series plant = Maker.RICHARDS.make(60, 21).photos.get(2).upTo(16);
    double[] dat = new double[17];
    double[] area = new double[17];
    for (int i = 0; i < 17; i++) {
      dat[i] = i;
      area[i] = plant.areaCm2(Math.min(i, 9));
    }
    List<Innovation> innovations = cohort.forPlant(Series.of(dat, area)).innovations();
    double sum = 0;
    for (int i = 10; i < 14; i++) {
      sum += innovations.get(i).z();
    }
    assertTrue(sum < -8, "four evenings after the stall: " + sum);
  }

  @Test
  void closedPhotosDoNotPullThePlantDown() {
    CohortCurve cohort = tonight(20);
    Series plant = Maker.RICHARDS.make(60, 21).photos.get(8).upTo(20);
    double[] dat = new double[21];
    double[] area = new double[21];
    boolean[] closed = new boolean[21];
    for (int i = 0; i < 21; i++) {
      dat[i] = i;
      closed[i] = i > 14;
      area[i] = plant.areaCm2(Math.min(i, 14)) * (i > 14 ? 0.9 : 1);
    }
    double before = cohort.forPlant(plant.upTo(14)).lnArea(TARGET).mean();
    Series seen = Series.of(dat, area);
    double asBounds = cohort.forPlant(seen.withClosed(closed)).lnArea(TARGET).mean();
    double asAreas = cohort.forPlant(seen).lnArea(TARGET).mean();
    assertEquals(before, asBounds, 0.03);
    assertTrue(asAreas < before - 0.1, "taken as areas they would: " + asAreas);
  }

  @Test
  void sickPlantsDoNotMakeTheSpread() {
    SimulatedCohort made = Maker.RICHARDS.make(60, 21);
    CohortPrior prior = prior();
    List<Series> healthy = made.photos.stream().map(s -> s.upTo(16)).toList();
    List<Series> mixed = new ArrayList<>(healthy);
    for (int i = 0; i < 6; i++) {
      double[] dat = {0, 4, 8, 12, 16};
      double[] area = new double[5];
      Arrays.fill(area, 8);
      mixed.set(i, Series.of(dat, area));
    }
    CohortCurve clean = FitCohort.of(healthy, CohortRule.defaults(), prior);
    CohortCurve dirty = FitCohort.of(mixed, CohortRule.defaults(), prior);
    assertEquals(clean.curve().lnArea(16), dirty.curve().lnArea(16), 0.06);
    assertTrue(dirty.plantSd(0) < 1.6 * clean.plantSd(0), "sd " + dirty.plantSd(0));
    assertTrue(dirty.wanderPerDay() < 1.6 * clean.wanderPerDay() + 0.005);
  }

  @Test
  void aCropsCurveServesWhereThereIsNoHistory() {
    GrowthCurve crop = new GrowthCurve(CurveModel.LOGISTIC, List.of(450.0, 0.22, 17.0));
    CohortPrior prior = CohortPrior.ofCrop(crop, 2);
    List<Series> seen = Maker.RICHARDS.make(40, 31).photos.stream().map(s -> s.upTo(3)).toList();
    CohortCurve cohort = FitCohort.of(seen, CohortRule.defaults(), prior);
    // Four photos: the level follows the plants, the end follows the crop's curve
    double typical =
        seen.stream().mapToDouble(s -> s.lnArea(3)).sorted().skip(20).findFirst().orElseThrow();
    assertEquals(typical, cohort.curve().lnArea(3), 0.08);
    assertEquals(Math.log(450), Math.log(cohort.curve().parameters().get(0)), 0.6);
  }

  @Test
  void theSamePhotosGiveTheSameCurve() {
    assertEquals(tonight(14).curve(), tonight(14).curve());
  }

  @Test
  void nonsenseIsRefused() {
    assertEquals(
        "cycles must not be empty",
        assertThrows(IllegalArgumentException.class, () -> CohortPrior.ofCycles(List.of()))
            .getMessage());
    assertEquals(
        "persistentFraction must be in 0..1, got -0.1",
        assertThrows(
                IllegalArgumentException.class,
                () -> CohortRule.defaults().withPersistentFraction(-0.1))
            .getMessage());
    NoCohortCurve none =
        assertInstanceOf(NoCohortCurve.class, FitCohort.of(List.of(), CohortRule.defaults()));
    assertEquals("no plant has a photo", none.reason());
  }

  private static CohortCurve tonight(int last) {
    List<Series> seen = Maker.RICHARDS.make(60, 21).photos.stream().map(s -> s.upTo(last)).toList();
    return FitCohort.of(seen, CohortRule.defaults(), prior());
  }

  private static CohortPrior prior() {
    return FitCohort.priorOf(history(Maker.RICHARDS), CohortRule.defaults()).orElseThrow();
  }

  private static List<List<Series>> history(Maker maker) {
    List<List<Series>> out = new ArrayList<>();
    for (int cycle = 0; cycle < 4; cycle++) {
      out.add(maker.make(60, 900 + cycle).photos);
    }
    return out;
  }
}
