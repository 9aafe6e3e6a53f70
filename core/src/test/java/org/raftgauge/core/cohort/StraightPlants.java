// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.raftgauge.core.growth.Series;

/**
 * The second way of plants on a straight line of ln area: all photos of a plant at once as one
 * normal vector, {@code y = Z (theta + u) + s + w(t) + e}, by the library's general matrices.
 */
final class StraightPlants {
  private final double[] theta;
  private final double[][] plants;
  private final Spread spread;
  private final double persistent;

  /**
   * @param theta of the cohort
   * @param plants covariance of u
   * @param spread wandering and scatter
   * @param persistent deviation of s
   */
  StraightPlants(double[] theta, double[][] plants, Spread spread, double persistent) {
    this.theta = theta;
    this.plants = plants;
    this.spread = spread;
    this.persistent = persistent;
  }

  /** Returns the design: a row (1, t) a photo. */
  static RealMatrix design(Series plant) {
    RealMatrix z = MatrixUtils.createRealMatrix(plant.size(), 2);
    for (int i = 0; i < plant.size(); i++) {
      z.setRow(i, new double[] {1, plant.dat(i)});
    }
    return z;
  }

  /** Returns the covariance of a plant's ln areas. */
  RealMatrix covariance(Series plant) {
    RealMatrix z = design(plant);
    RealMatrix v = z.multiply(MatrixUtils.createRealMatrix(plants)).multiply(z.transpose());
    for (int i = 0; i < plant.size(); i++) {
      for (int j = 0; j < plant.size(); j++) {
        double since = Math.min(plant.dat(i), plant.dat(j)) - plant.dat(0);
        double error = plant.errorFraction(i);
        v.addToEntry(
            i,
            j,
            persistent * persistent
                + spread.wanderPerDay * since
                + (i == j ? error * error + spread.scatter : 0));
      }
    }
    return v;
  }

  RealMatrix inverse(Series plant) {
    return new LUDecomposition(covariance(plant)).getSolver().getInverse();
  }

  /** Returns ln areas less the cohort's line. */
  RealVector off(Series plant) {
    RealVector off = new ArrayRealVector(plant.size());
    for (int i = 0; i < plant.size(); i++) {
      off.setEntry(i, plant.lnArea(i) - theta[0] - theta[1] * plant.dat(i));
    }
    return off;
  }

  double logLikelihood(Series plant) {
    double determinant = new LUDecomposition(covariance(plant)).getDeterminant();
    return -0.5
        * (plant.size() * Math.log(2 * Math.PI)
            + Math.log(determinant)
            + inverse(plant).preMultiply(off(plant)).dotProduct(off(plant)));
  }

  /** Returns the covariance of (u, s + w(t)) with the ln areas: the gain's upper part. */
  RealMatrix with(Series plant, double dat) {
    RealMatrix u = MatrixUtils.createRealMatrix(plants).multiply(design(plant).transpose());
    RealMatrix c = MatrixUtils.createRealMatrix(3, plant.size());
    c.setSubMatrix(u.getData(), 0, 0);
    for (int i = 0; i < plant.size(); i++) {
      double since = Math.min(plant.dat(i), dat) - plant.dat(0);
      c.setEntry(2, i, persistent * persistent + spread.wanderPerDay * since);
    }
    return c;
  }

  /** Returns what the photos tell of (u, s + w(dat)): the conditional mean. */
  RealVector mean(Series plant, double dat) {
    return with(plant, dat).operate(inverse(plant).operate(off(plant)));
  }

  /** Returns the conditional covariance of (u, s + w(dat)). */
  RealMatrix left(Series plant, double dat) {
    RealMatrix before = MatrixUtils.createRealMatrix(3, 3);
    before.setSubMatrix(plants, 0, 0);
    before.setEntry(
        2, 2, persistent * persistent + spread.wanderPerDay * Math.max(0, dat - plant.dat(0)));
    RealMatrix c = with(plant, dat);
    return before.subtract(c.multiply(inverse(plant)).multiply(c.transpose()));
  }
}
