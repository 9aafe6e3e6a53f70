// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/** Forecasts of a cohort against the delta method with differences instead of gradients. */
class CohortCurveTest {
  private static final double[] THETA = {Math.log(400), Math.log(0.2), 16};
  private static final double[][] ERROR = {
    {0.01, 0.001, 0.02}, {0.001, 0.0025, -0.004}, {0.02, -0.004, 0.5}
  };
  private static final double[][] PLANTS = {{0.03, 0, 0}, {0, 0.01, 0}, {0, 0, 1}};
  private static final Spread SPREAD = new Spread(PLANTS, 4e-4, 9e-4);
  private static final GrowthCurve OTHER =
      new GrowthCurve(CurveModel.EXPONENTIAL, List.of(10.0, 0.1));

  private static CohortCurve cohort(List<GrowthCurve> others) {
    return new CohortCurve(
        new Estimated(CurveModel.LOGISTIC, THETA, ERROR, SPREAD),
        new CohortCurve.Basis(7, 2, 14, 0.02, new Extrapolation(others, Optional.of("open"))));
  }

  private static double lnArea(double[] theta, double dat) {
    return theta[0] - Math.log(1 + Math.exp(-Math.exp(theta[1]) * (dat - theta[2])));
  }

  /** Returns the variance of a function of the parameters by central differences. */
  private static double variance(ToDoubleFunction<double[]> f, double[][] covariance) {
    double[] g = new double[3];
    for (int i = 0; i < 3; i++) {
      double[] up = THETA.clone();
      double[] down = THETA.clone();
      up[i] += 1e-5;
      down[i] -= 1e-5;
      g[i] = (f.applyAsDouble(up) - f.applyAsDouble(down)) / 2e-5;
    }
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        sum += g[i] * covariance[i][j] * g[j];
      }
    }
    return sum;
  }

  @Test
  void theTypicalPlantHasTheErrorOfTheCurve() {
    Forecast typical = cohort(List.of()).typicalLnArea(20);
    assertEquals(lnArea(THETA, 20), typical.mean(), 1e-12);
    assertEquals(variance(t -> lnArea(t, 20), ERROR), typical.sd() * typical.sd(), 1e-8);
  }

  @Test
  void anUnknownPlantDiffersAndWandersSinceTheFirstPhotoToo() {
    double[][] both = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        both[i][j] = ERROR[i][j] + PLANTS[i][j];
      }
    }
    Forecast unknown = cohort(List.of()).lnArea(20);
    double expected = variance(t -> lnArea(t, 20), both) + 18 * 4e-4;
    assertEquals(expected, unknown.sd() * unknown.sd(), 1e-8);
    // Before the first photo nothing has wandered.
    double before = cohort(List.of()).lnArea(1).sd();
    assertEquals(variance(t -> lnArea(t, 1), both), before * before, 1e-8);
  }

  @Test
  void growthBetweenDaysHasTheErrorOfTheDifference() {
    Forecast growth = cohort(List.of()).lnGrowth(8, 20);
    assertEquals(lnArea(THETA, 20) - lnArea(THETA, 8), growth.mean(), 1e-12);
    double expected = variance(t -> lnArea(t, 20) - lnArea(t, 8), ERROR);
    assertEquals(expected, growth.sd() * growth.sd(), 1e-8);
  }

  @Test
  void beyondTheLastPhotoOtherCurvesAddTheSquareOfTheirDifference() {
    CohortCurve doubted = cohort(List.of(OTHER, OTHER));
    assertEquals(0, doubted.modelVariance(14), 0);
    // From day 14 to 20 the other rises by 6 * 0.1.
    double off = 0.6 - (lnArea(THETA, 20) - lnArea(THETA, 14));
    assertEquals(off * off, doubted.modelVariance(20), 1e-12);
    double with = doubted.typicalLnArea(20).sd();
    double without = cohort(List.of()).typicalLnArea(20).sd();
    assertEquals(without * without + off * off, with * with, 1e-12);
    double grown = doubted.lnGrowth(8, 20).sd();
    double alone = cohort(List.of()).lnGrowth(8, 20).sd();
    assertEquals(alone * alone + off * off, grown * grown, 1e-12);
    double plant = doubted.lnArea(20).sd();
    double own = cohort(List.of()).lnArea(20).sd();
    assertEquals(own * own + off * off, plant * plant, 1e-12);
    Series seen = Series.of(new double[] {14}, new double[] {150});
    double later = doubted.forPlant(seen).lnArea(20).sd();
    double sure = cohort(List.of()).forPlant(seen).lnArea(20).sd();
    assertEquals(sure * sure + off * off, later * later, 1e-12);
  }

  @Test
  void whatItRestsOnIsTold() {
    CohortCurve cohort = cohort(List.of());
    assertEquals(7, cohort.plants());
    assertEquals(14, cohort.lastDat(), 0);
    assertEquals(Optional.of("open"), cohort.asymptoteDoubt());
    assertEquals(Math.sqrt(0.5), cohort.standardError(2), 1e-15);
    assertEquals(1, cohort.plantSd(2), 0);
    assertEquals(0.02, cohort.wanderPerDay(), 1e-15);
    assertEquals(0.03, cohort.scatter(), 1e-15);
    assertEquals(400, cohort.curve().parameters().get(0), 1e-9);
    double h = 1e-5;
    assertEquals(
        (lnArea(THETA, 12 + h) - lnArea(THETA, 12 - h)) / (2 * h), cohort.rgrPerDay(12), 1e-8);
  }

  @Test
  void aPhotoMoreThanFourDeviationsOffIsNamedAndAClosedOneIsNoInnovation() {
    CohortCurve cohort = cohort(List.of());
    double[] area = {40, 41, 44, 3, 50};
    Series plant =
        Series.of(new double[] {3, 3.1, 3.2, 3.3, 3.4}, area)
            .withErrors(new double[] {0.02, 0.02, 0.02, 0.02, 0.02})
            .withClosed(new boolean[] {false, false, true, false, false});
    PlantCurve curve = cohort.forPlant(plant);
    assertEquals(4, curve.innovations().size());
    assertEquals(3.3, curve.innovations().get(2).dat(), 0);
    assertEquals(Math.log(3), curve.innovations().get(2).lnArea(), 1e-12);
    assertTrue(Math.abs(curve.innovations().get(2).z()) > 4);
    assertTrue(curve.discountedDat().contains(3.3));
  }
}
