// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/**
 * A cohort of straight lines, each plant on days of its own so that none err alike: the estimate
 * against generalised least squares with all photos at once ({@link StraightPlants}).
 */
class EstimateCohortTest {
  private static final double PERSISTENT = 0.02;
  private static final GrowthCurve CROP =
      new GrowthCurve(CurveModel.EXPONENTIAL, List.of(5.0, 0.2));
  private static final CohortPrior PRIOR = CohortPrior.ofCrop(CROP, 1);

  private static List<Series> plants() {
    Random random = new Random(11);
    List<Series> plants = new ArrayList<>();
    for (int plant = 0; plant < 12; plant++) {
      double level = Math.log(6) + 0.15 * random.nextGaussian();
      double rate = 0.17 + 0.01 * random.nextGaussian();
      double[] dat = new double[5];
      double[] area = new double[5];
      double[] error = new double[5];
      for (int i = 0; i < 5; i++) {
        dat[i] = 12 * i + plant;
        error[i] = 0.03;
        area[i] = Math.exp(level + rate * dat[i] + 0.03 * random.nextGaussian());
      }
      plants.add(Series.of(dat, area).withErrors(error));
    }
    return plants;
  }

  private static StraightPlants atOnce(Estimated found) {
    return new StraightPlants(found.theta(), found.spread().plants, found.spread(), PERSISTENT);
  }

  private static RealMatrix information(List<Series> plants, Estimated found) {
    RealMatrix sum =
        new LUDecomposition(MatrixUtils.createRealMatrix(PRIOR.between())).getSolver().getInverse();
    for (Series plant : plants) {
      RealMatrix z = StraightPlants.design(plant);
      sum = sum.add(z.transpose().multiply(atOnce(found).inverse(plant)).multiply(z));
    }
    return sum;
  }

  private static RealMatrix error(List<Series> plants, Estimated found) {
    return new LUDecomposition(information(plants, found)).getSolver().getInverse();
  }

  /** Returns the line of generalised least squares, every plant counting alike. */
  private static RealVector leastSquares(List<Series> plants, Estimated found) {
    RealVector sum = information(List.of(), found).operate(new ArrayRealVector(PRIOR.theta()));
    for (Series plant : plants) {
      RealMatrix z = StraightPlants.design(plant);
      RealVector y = atOnce(found).off(plant).add(z.operate(new ArrayRealVector(found.theta())));
      sum = sum.add(z.transpose().operate(atOnce(found).inverse(plant).operate(y)));
    }
    return error(plants, found).operate(sum);
  }

  @Test
  void theLineIsGeneralisedLeastSquaresWithThePriorAsOneMorePhoto() {
    List<Series> plants = plants();
    Estimated found = new EstimateCohort(plants, PRIOR, PERSISTENT).run(PRIOR.theta());
    RealMatrix error = error(plants, found);
    RealVector theta = leastSquares(plants, found);
    for (int i = 0; i < 2; i++) {
      double sd = Math.sqrt(error.getEntry(i, i));
      // The rounds end at a hundredth of a tenth of the error.
      assertEquals(theta.getEntry(i), found.theta()[i], 0.05 * sd);
      for (int j = 0; j < 2; j++) {
        double other = Math.sqrt(error.getEntry(j, j));
        assertEquals(error.getEntry(i, j), found.error()[i][j], 1e-6 * sd * other);
      }
    }
    assertEquals(Math.log(6), theta.getEntry(0), 4 * Math.sqrt(error.getEntry(0, 0)));
  }

  @Test
  void theSpreadIsTheMeanSecondMomentOfThePlantsAndTheAssumedOnes() {
    List<Series> plants = plants();
    Estimated found = new EstimateCohort(plants, PRIOR, PERSISTENT).run(PRIOR.theta());
    StraightPlants atOnce = atOnce(found);
    RealMatrix sum =
        MatrixUtils.createRealMatrix(PRIOR.spread().plants).scalarMultiply(PRIOR.weight());
    for (Series plant : plants) {
      double last = plant.dat(plant.size() - 1);
      RealVector mean = atOnce.mean(plant, last).getSubVector(0, 2);
      sum = sum.add(atOnce.left(plant, last).getSubMatrix(0, 1, 0, 1)).add(mean.outerProduct(mean));
    }
    RealMatrix expected = sum.scalarMultiply(1 / (plants.size() + PRIOR.weight()));
    for (int i = 0; i < 2; i++) {
      // The rounds end where a variance changes by less than 1 %.
      assertEquals(
          expected.getEntry(i, i), found.spread().plants[i][i], 0.02 * expected.getEntry(i, i));
    }
  }

  @Test
  void noOtherWanderingOrScatterIsClearlyLikelier() {
    List<Series> plants = plants();
    Estimated found = new EstimateCohort(plants, PRIOR, PERSISTENT).run(PRIOR.theta());
    double best = posterior(plants, found, 1, 1);
    for (double factor : new double[] {0.25, 0.5, 0.8, 1.25, 2, 4}) {
      assertTrue(posterior(plants, found, factor, 1) < best + 0.02, "wandering x " + factor);
      assertTrue(posterior(plants, found, 1, factor) < best + 0.02, "scatter x " + factor);
    }
  }

  /** Returns the likelihood of all photos and of what is assumed: factors within exp(1.5). */
  private static double posterior(
      List<Series> plants, Estimated found, double wander, double scatter) {
    Spread s = found.spread();
    Spread other = new Spread(s.plants, wander * s.wanderPerDay, scatter * s.scatter);
    StraightPlants atOnce = new StraightPlants(found.theta(), s.plants, other, PERSISTENT);
    double sum = plants.stream().mapToDouble(atOnce::logLikelihood).sum();
    double w = Math.log(other.wanderPerDay / (0.015 * 0.015)) / 1.5;
    double e = Math.log(other.scatter / (0.02 * 0.02)) / 1.5;
    return sum - 0.5 * (w * w + e * e);
  }

  @Test
  void aPlantFarOffAllOthersCountsLess() {
    CohortPrior loose = CohortPrior.ofCrop(CROP, 10);
    List<Series> plants = new ArrayList<>(plants());
    double clean = new EstimateCohort(plants, loose, PERSISTENT).run(loose.theta()).theta()[0];
    double[] dat = {11.5, 23.5, 35.5, 47.5, 59.5};
    double[] area = Arrays.stream(dat).map(t -> 30 * Math.exp(0.17 * t)).toArray();
    plants.add(Series.of(dat, area).withErrors(new double[] {0.03, 0.03, 0.03, 0.03, 0.03}));
    double dirty = new EstimateCohort(plants, loose, PERSISTENT).run(loose.theta()).theta()[0];
    // Five times the others' size: counted alike it would lift the line by ln 5 / 13.
    assertEquals(clean, dirty, Math.log(5) / 13 / 2);
  }
}
