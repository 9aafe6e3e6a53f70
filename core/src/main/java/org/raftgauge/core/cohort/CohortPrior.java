// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.List;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;

/**
 * What is known of a crop's curve before tonight's cohort has grown: typical working parameters,
 * how cohorts differ among themselves, and how plants spread within one.
 */
public final class CohortPrior {
  /** Past cycles, in plants, that the spread from history counts for; working value. */
  private static final double PLANTS_OF_HISTORY = 30;

  /** How many cycles the assumed differences between cohorts count for; working value. */
  private static final double ASSUMED_CYCLES = 3;

  private static final double PLANTS_ASSUMED = 5;

  private final CurveModel model;
  private final double[] theta;
  private final double[][] between;
  private final Spread spread;
  private final double weight;

  private CohortPrior(Estimated estimated, double weight) {
    this.model = estimated.model();
    this.theta = estimated.theta();
    this.between = estimated.error();
    this.spread = estimated.spread();
    this.weight = weight;
  }

  /**
   * Makes a prior from past cycles of the same crop.
   *
   * <p>The covariance between cohorts is that of their parameters, pooled with three cycles' worth
   * of assumed differences (size 15 %, rate 10 %, start 25 %), for few cycles tell little.
   *
   * @param cycles curves of at least one past cycle, all of one model
   * @throws IllegalArgumentException if there are none or their models differ
   */
  public static CohortPrior ofCycles(List<CohortCurve> cycles) {
    if (cycles.isEmpty()) {
      throw new IllegalArgumentException("cycles must not be empty");
    }
    CurveModel model = cycles.get(0).model();
    int p = model.parameterCount();
    double[] mean = new double[p];
    double[][] plants = new double[p][p];
    double wander = 0;
    double scatter = 0;
    for (CohortCurve cycle : cycles) {
      if (cycle.model() != model) {
        throw new IllegalArgumentException(
            "cycles must share one model, got " + model + " and " + cycle.model());
      }
      SmallMatrix.add(mean, cycle.theta(), 1.0 / cycles.size());
      SmallMatrix.add(plants, cycle.spread().plants, 1.0 / cycles.size());
      wander += cycle.spread().wanderPerDay / cycles.size();
      scatter += cycle.spread().scatter / cycles.size();
    }
    double[][] between = between(cycles, mean);
    Spread spread = new Spread(plants, wander, scatter);
    return new CohortPrior(new Estimated(model, mean, between, spread), PLANTS_OF_HISTORY);
  }

  private static double[][] between(List<CohortCurve> cycles, double[] mean) {
    int n = cycles.size();
    double[][] sum = assumedBetween(cycles.get(0).model(), mean, ASSUMED_CYCLES);
    for (CohortCurve cycle : cycles) {
      double[] off = cycle.theta().clone();
      SmallMatrix.add(off, mean, -1);
      SmallMatrix.addOuter(sum, off, 1);
    }
    double[][] out = new double[mean.length][mean.length];
    // The mean of n cycles is itself uncertain by a share 1/n.
    SmallMatrix.add(out, sum, (1 + 1.0 / n) / (n - 1 + ASSUMED_CYCLES));
    return out;
  }

  private static double[][] assumedBetween(CurveModel model, double[] theta, double times) {
    double[][] out = new double[theta.length][theta.length];
    out[0][0] = times * 0.15 * 0.15;
    out[1][1] = times * 0.1 * 0.1 * (model == CurveModel.EXPONENTIAL ? theta[1] * theta[1] : 1);
    if (theta.length > 2) {
      out[2][2] = times * Math.pow(0.25 / Math.exp(theta[1]), 2);
    }
    if (theta.length > 3) {
      out[3][3] = times * 0.1 * 0.1;
    }
    return out;
  }

  /**
   * Makes a prior from a crop's curve, as a grower or a table gives it.
   *
   * @param curve the crop's typical curve
   * @param looseness by what factor cohorts may differ from it more than past cycles usually do
   *     among themselves; 1 for a curve of the same house and season, 2 or 3 for another's
   */
  public static CohortPrior ofCrop(GrowthCurve curve, double looseness) {
    if (!(looseness > 0) || Double.isInfinite(looseness)) {
      throw new IllegalArgumentException("looseness must be finite and > 0, got " + looseness);
    }
    double[] theta = curve.working();
    double[][] between = assumedBetween(curve.model(), theta, looseness * looseness);
    Spread spread = Spread.assumed(curve.model(), theta);
    return new CohortPrior(new Estimated(curve.model(), theta, between, spread), PLANTS_ASSUMED);
  }

  CurveModel model() {
    return model;
  }

  double[] theta() {
    return theta;
  }

  double[][] between() {
    return between;
  }

  Spread spread() {
    return spread;
  }

  /** Returns how many plants the spread counts for. */
  double weight() {
    return weight;
  }
}
