// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;

/** What is assumed of plants and cohorts before any told, and what cycles make of it, by hand. */
class AssumedSpreadTest {

  @Test
  void plantsOfACropDifferBySizeRateAndStart() {
    GrowthCurve richards = new GrowthCurve(CurveModel.RICHARDS, List.of(400.0, 0.25, 15.0, 1.5));
    Spread spread = CohortPrior.ofCrop(richards, 1).spread();
    // 17 % for good, 10 % in rate, a start off by 20 % of ln area: 0.2 / 0.25 days, 10 % in shape.
    diagonal(spread.plants, 0.17, 0.1, 0.2 / 0.25, 0.1);
    assertEquals(0.015, Math.sqrt(spread.wanderPerDay), 1e-15);
    assertEquals(0.02, Math.sqrt(spread.scatter), 1e-15);
    Spread three =
        CohortPrior.ofCrop(new GrowthCurve(CurveModel.LOGISTIC, List.of(400.0, 0.2, 15.0)), 1)
            .spread();
    diagonal(three.plants, 0.17, 0.1, 1);
    Spread two =
        CohortPrior.ofCrop(new GrowthCurve(CurveModel.EXPONENTIAL, List.of(4.0, 0.3)), 1).spread();
    diagonal(two.plants, 0.17, 0.03);
  }

  @Test
  void cohortsOfACropDifferByMoreTheLooserItsCurveIs() {
    GrowthCurve richards = new GrowthCurve(CurveModel.RICHARDS, List.of(400.0, 0.25, 15.0, 1.5));
    CohortPrior prior = CohortPrior.ofCrop(richards, 2);
    diagonal(prior.between(), 0.3, 0.2, 2 * 0.25 / 0.25, 0.2);
    assertEquals(5, prior.weight(), 0);
    assertEquals(CurveModel.RICHARDS, prior.model());
    assertEquals(Math.log(400), prior.theta()[0], 1e-12);
    CohortPrior line =
        CohortPrior.ofCrop(new GrowthCurve(CurveModel.EXPONENTIAL, List.of(4.0, 0.3)), 3);
    diagonal(line.between(), 0.45, 3 * 0.1 * 0.3);
    for (double bad : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertEquals(
          "looseness must be finite and > 0, got " + bad,
          assertThrows(IllegalArgumentException.class, () -> CohortPrior.ofCrop(richards, bad))
              .getMessage());
    }
  }

  @Test
  void cyclesGiveTheirMeanAndHowTheyDifferTheAssumedCountingForThreeCycles() {
    CohortCurve first = cycle(new double[] {1, 0.2}, new double[][] {{0.04, 0.01}, {0.01, 0.02}});
    CohortCurve second = cycle(new double[] {2, 0.4}, new double[][] {{0.08, 0.03}, {0.03, 0.06}});
    CohortPrior prior = CohortPrior.ofCycles(List.of(first, second));
    assertEquals(1.5, prior.theta()[0], 1e-15);
    assertEquals(0.3, prior.theta()[1], 1e-15);
    // Off the mean by 0.5 and 0.1 each way: 2 * 0.25, 2 * 0.05, 2 * 0.01; assumed 3 * 0.15^2 and
    // 3 * (0.1 * 0.3)^2; over 2 - 1 + 3, and half as much again for the mean of two.
    double times = 1.5 / 4;
    assertEquals(times * (0.5 + 3 * 0.0225), prior.between()[0][0], 1e-12);
    assertEquals(times * 0.1, prior.between()[0][1], 1e-12);
    assertEquals(times * (0.02 + 3 * 0.0009), prior.between()[1][1], 1e-12);
    assertEquals(0.06, prior.spread().plants[0][0], 1e-15);
    assertEquals(0.02, prior.spread().plants[1][0], 1e-15);
    assertEquals(0.04, prior.spread().plants[1][1], 1e-15);
    assertEquals(3e-4, prior.spread().wanderPerDay, 1e-18);
    assertEquals(2e-4, prior.spread().scatter, 1e-18);
    assertEquals(30, prior.weight(), 0);
  }

  @Test
  void cyclesOfTwoModelsAreRefused() {
    CohortCurve line = cycle(new double[] {1, 0.2}, new double[2][2]);
    CohortCurve other = cycle(CurveModel.LOGISTIC, new double[] {5, -1, 10}, new double[3][3]);
    assertEquals(
        "cycles must share one model, got EXPONENTIAL and LOGISTIC",
        assertThrows(
                IllegalArgumentException.class, () -> CohortPrior.ofCycles(List.of(line, other)))
            .getMessage());
  }

  private static void diagonal(double[][] variances, double... deviations) {
    for (int i = 0; i < deviations.length; i++) {
      for (int j = 0; j < deviations.length; j++) {
        double expected = i == j ? deviations[i] * deviations[i] : 0;
        assertEquals(expected, variances[i][j], 1e-12, i + "," + j);
      }
    }
    assertEquals(deviations.length, variances.length);
  }

  private static CohortCurve cycle(double[] theta, double[][] plants) {
    return cycle(CurveModel.EXPONENTIAL, theta, plants);
  }

  private static CohortCurve cycle(CurveModel model, double[] theta, double[][] plants) {
    // Wandering 2e-4 and 4e-4, scatter 1e-4 and 3e-4, by the size of the plants' spread.
    double more = plants[0][0] > 0.05 ? 2e-4 : 0;
    Spread spread = new Spread(plants, 2e-4 + more, 1e-4 + more);
    return new CohortCurve(
        new Estimated(model, theta, new double[theta.length][theta.length], spread),
        new CohortCurve.Basis(1, 0, 1, 0.02, new Extrapolation(List.of(), Optional.empty())));
  }
}
