// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.Series;

/** A plant's photos one by one against all at once ({@link StraightPlants}). */
class PlantFilterTest {
  private static final double[] THETA = {1.5, 0.12};
  private static final double[][] PLANTS = {{0.03, 0.001}, {0.001, 0.0004}};
  private static final Spread SPREAD = new Spread(PLANTS, 3e-4, 5e-4);
  private static final double PERSISTENT = 0.05;
  private static final StraightPlants AT_ONCE =
      new StraightPlants(THETA, PLANTS, SPREAD, PERSISTENT);
  private static final Series PLANT =
      Series.of(new double[] {2, 3, 6, 6.5, 11}, areas(0.1, 0.13, 0.06, 0.12, 0.19))
          .withErrors(new double[] {0.03, 0.05, 0.02, 0.04, 0.03});

  /** Returns areas so far off the line, in ln. */
  private static double[] areas(double... off) {
    double[] dat = {2, 3, 6, 6.5, 11};
    return IntStream.range(0, off.length)
        .mapToDouble(i -> Math.exp(THETA[0] + THETA[1] * dat[i] + off[i]))
        .toArray();
  }

  private static Estimated cohort(double[][] error) {
    return new Estimated(CurveModel.EXPONENTIAL, THETA, error, SPREAD);
  }

  private static PlantFilter filtered(Series plant) {
    PlantFilter filter = new PlantFilter(cohort(new double[2][2]), PLANTS, PERSISTENT);
    filter.restart();
    for (int i = 0; i < plant.size(); i++) {
      filter.take(plant, i);
    }
    return filter;
  }

  @Test
  void whatIsKnownAfterTheLastPhotoIsTheConditionalNormal() {
    PlantFilter filter = filtered(PLANT);
    RealVector mean = AT_ONCE.mean(PLANT, 11);
    RealMatrix left = AT_ONCE.left(PLANT, 11);
    for (int i = 0; i < 2; i++) {
      assertEquals(mean.getEntry(i), filter.mean[i], 1e-12);
      for (int j = 0; j < 2; j++) {
        assertEquals(left.getEntry(i, j), filter.covariance[i][j], 1e-13);
      }
      double together = filter.covariance[i][2] + filter.covariance[i][3];
      assertEquals(left.getEntry(i, 2), together, 1e-13);
    }
    assertEquals(mean.getEntry(2), filter.mean[2] + filter.mean[3], 1e-12);
    assertEquals(11, filter.lastDat, 0);
  }

  @Test
  void theLikelihoodIsThatOfAllPhotosAtOnceAndDistanceItsSquares() {
    PlantFilter filter = filtered(PLANT);
    assertEquals(AT_ONCE.logLikelihood(PLANT), filter.logLikelihood, 1e-11);
    double squares =
        AT_ONCE.inverse(PLANT).operate(AT_ONCE.off(PLANT)).dotProduct(AT_ONCE.off(PLANT));
    assertEquals(squares, filter.distance, 1e-11);
  }

  @Test
  void theLastInnovationIsTheLastPhotoGivenTheOthers() {
    PlantFilter filter = filtered(PLANT);
    Series before = PLANT.upTo(10);
    RealVector known = AT_ONCE.mean(before, 11);
    double expected =
        THETA[0] + known.getEntry(0) + 11 * (THETA[1] + known.getEntry(1)) + known.getEntry(2);
    RealVector g = new ArrayRealVector(new double[] {1, 11, 1});
    // The random walk goes on for 4.5 days after the last photo seen.
    double variance =
        AT_ONCE.left(before, 6.5).operate(g).dotProduct(g)
            + 4.5 * SPREAD.wanderPerDay
            + 0.03 * 0.03
            + SPREAD.scatter;
    assertEquals(expected, filter.expected(), 1e-12);
    assertEquals(Math.sqrt(variance), filter.sd(), 1e-12);
    assertEquals((PLANT.lnArea(4) - expected) / Math.sqrt(variance), filter.z(), 1e-10);
    assertTrue(Math.abs(filter.z()) < 3, "no photo of this plant is bent");
  }

  @Test
  void aPlantStartsAnewWithoutTheOneBefore() {
    PlantFilter filter = filtered(PLANT);
    filter.restart();
    filter.take(PLANT.upTo(2), 0);
    PlantFilter fresh = filtered(PLANT.upTo(2));
    assertEquals(fresh.logLikelihood, filter.logLikelihood, 0);
    assertEquals(fresh.mean[1], filter.mean[1], 0);
    assertEquals(fresh.distance, filter.distance, 0);
  }

  @Test
  void aPhotoFarOffCountsLinearlyBeyondThreeDeviations() {
    Series far = Series.of(new double[] {2}, areas(2)).withErrors(new double[] {0.03});
    double variance = AT_ONCE.covariance(far).getEntry(0, 0);
    double z = 2 / Math.sqrt(variance);
    assertTrue(z > 3, "z " + z);
    PlantFilter filter = filtered(far);
    assertEquals(3, filter.z(), 0);
    assertEquals(6 * z - 9, filter.distance, 1e-10);
    assertEquals(
        -0.5 * (Math.log(2 * Math.PI * variance) + 6 * z - 9), filter.logLikelihood, 1e-10);
    // It moves the plant as one three deviations off, and tells 3 / z of what such a one tells.
    double gain = (PLANTS[0][0] + 2 * PLANTS[0][1]) / variance;
    assertEquals(gain * 3 * Math.sqrt(variance), filter.mean[0], 1e-12);
    assertEquals(PLANTS[0][0] - gain * gain * variance * 3 / z, filter.covariance[0][0], 1e-12);
    Series under = Series.of(new double[] {2}, areas(-2)).withErrors(new double[] {0.03});
    assertEquals(-3, filtered(under).z(), 0);
  }

  @Test
  void aClosedPhotoIsTheNormalAboveItsBound() {
    Series bound =
        Series.of(new double[] {2}, areas(0.1))
            .withErrors(new double[] {0.03})
            .withClosed(new boolean[] {true});
    double sd = Math.sqrt(AT_ONCE.covariance(bound).getEntry(0, 0));
    NormalDistribution unit = new NormalDistribution();
    double above = 1 - unit.cumulativeProbability(0.1 / sd);
    PlantFilter filter = filtered(bound);
    assertEquals(Math.log(above), filter.logLikelihood, 1e-10);
    assertEquals(0, filter.distance, 0);
    double hazard = unit.density(0.1 / sd) / above;
    double gain = (PLANTS[0][0] + 2 * PLANTS[0][1]) / (sd * sd);
    assertEquals(gain * sd * hazard, filter.mean[0], 1e-10);
    // The variance of a normal above a bound is less by h (h - a), Johnson and Kotz 1970, 13.7.
    double share = hazard * (hazard - 0.1 / sd);
    assertEquals(PLANTS[0][0] - gain * gain * sd * sd * share, filter.covariance[0][0], 1e-10);
  }

  @Test
  void aPlantsCurveIsTheConditionalNormalAtAnyDay() {
    CohortCurve cohort =
        new CohortCurve(
            cohort(new double[2][2]),
            new CohortCurve.Basis(
                3, 1, 11, PERSISTENT, new Extrapolation(java.util.List.of(), Optional.empty())));
    PlantCurve curve = cohort.forPlant(PLANT);
    RealVector known = AT_ONCE.mean(PLANT, 11);
    Forecast ahead = curve.lnArea(15);
    RealVector g = new ArrayRealVector(new double[] {1, 15, 1});
    assertEquals(
        THETA[0] + known.getEntry(0) + 15 * (THETA[1] + known.getEntry(1)), ahead.mean(), 0.2);
    double w = curve.lnArea(11).mean() - (THETA[0] + 11 * THETA[1]);
    // Without the persistent error, which is the camera's, not the plant's.
    double s = w - known.getEntry(0) - 11 * known.getEntry(1);
    assertEquals(
        THETA[0] + known.getEntry(0) + 15 * (THETA[1] + known.getEntry(1)) + s,
        ahead.mean(),
        1e-12);
    assertTrue(
        ahead.sd()
            <= Math.sqrt(AT_ONCE.left(PLANT, 11).operate(g).dotProduct(g) + 4 * SPREAD.wanderPerDay)
                + PERSISTENT);
    assertEquals(
        Math.pow(curve.lnArea(11).sd(), 2),
        Math.pow(curve.lnArea(10).sd(), 2)
            + 21 * curve.covariance(1, 1)
            + 2 * curve.covariance(0, 1)
            + 2 * curve.covariance(1, 3),
        1e-12);
    assertEquals(THETA[1] + known.getEntry(1), curve.rgrPerDay(3).mean(), 1e-12);
    assertEquals(Math.sqrt(AT_ONCE.left(PLANT, 11).getEntry(1, 1)), curve.rgrPerDay(3).sd(), 1e-12);
    assertEquals(THETA[0] + known.getEntry(0), curve.working().get(0), 1e-12);
    assertEquals(THETA[1] + known.getEntry(1), curve.working().get(1), 1e-12);
    assertEquals(2, curve.working().size());
    assertEquals(5, curve.innovations().size());
  }
}
