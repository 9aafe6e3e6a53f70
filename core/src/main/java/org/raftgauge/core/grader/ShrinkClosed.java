// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Shrinks a closed fit that rests on growth curves to the open fit of the same crop, and lets it
 * know what its weighings err in common.
 *
 * <p>The areas that curves give to the plants of one cohort are off together, so that thirty
 * weighings of one cycle tell little more of the closed fit's level than one; and the farther from
 * closure, the more. So it is estimated anew by generalised least squares, with errors of level and
 * slope that the weighings of a cohort share, from where the open fit puts closed plants, with room
 * for closed plants being built otherwise. Without an open fit only the slope is expected: between
 * that of a flat canopy, 1, and that of plants that grow alike in all directions, 1.5.
 */
final class ShrinkClosed {
  /** What curves from before closure are off by for a whole cohort, of ln area; working value. */
  private static final double COHORT_SD = 0.06;

  /** How far closed plants may weigh off the open fit's line, of ln w; a working value. */
  private static final double LEVEL_SD = 0.10;

  /** How far the slopes may differ; a working value. */
  private static final double SLOPE_SD = 0.1;

  /** What curves' growth past closure is off by for a cohort, as a share of it; working value. */
  private static final double COHORT_SLOPE_SD = 0.2;

  /** Middle of slopes from 1 (a flat canopy) to 1.5 (isometry), and their spread. */
  private static final double EXPECTED_SLOPE = 1.25;

  private static final double EXPECTED_SLOPE_SD = 0.15;

  /** Of a level of which nothing is known, of ln w. */
  private static final double UNKNOWN = 10;

  /** Weighings less apart than this count as of one cohort. */
  private static final Duration COHORT = Duration.ofDays(14);

  private static final List<Term> OPEN = List.of(Term.of(), Term.of(Size.AREA));
  private static final List<Term> CLOSED = List.of(Term.of(), Term.of(Size.CURVE));

  private ShrinkClosed() {}

  /**
   * Shrinks.
   *
   * @param open the open fit, where there is one
   * @param closed the closed fit
   * @param weighed the weighings that it was fitted on
   * @return the shrunk fit; the closed fit as it was where it does not rest on the curve alone
   */
  static RegimeFit of(Optional<RegimeFit> open, RegimeFit closed, List<Weighed> weighed) {
    Optional<RegimeFit> line = open.filter(o -> o.numbers().terms().equals(OPEN));
    return closed.numbers().terms().equals(CLOSED) ? shrunk(line, closed, inTime(weighed)) : closed;
  }

  private static List<Weighed> inTime(List<Weighed> weighed) {
    return weighed.stream()
        .sorted(Comparator.comparing((Weighed w) -> w.weighedAt().toInstant()))
        .toList();
  }

  private static RegimeFit shrunk(
      Optional<RegimeFit> open, RegimeFit closed, List<Weighed> weighed) {
    RealMatrix x = new Array2DRowRealMatrix(FitRegime.design(weighed, CLOSED), false);
    RealVector y = new ArrayRealVector(FitRegime.lnWeights(weighed), false);
    double[] expected =
        open.map(RegimeFit::coefficients)
            .orElseGet(() -> new double[] {-EXPECTED_SLOPE * middleOf(x), EXPECTED_SLOPE});
    double middle = middleOf(x);
    RealMatrix room =
        open.map(
                o ->
                    new Array2DRowRealMatrix(o.covariance(), false)
                        .add(room(LEVEL_SD, SLOPE_SD, middle)))
            .orElseGet(() -> room(UNKNOWN, EXPECTED_SLOPE_SD, middle));
    RealMatrix prior = MatrixUtils.inverse(room);
    RealMatrix weight = MatrixUtils.inverse(errors(weighed, closed, x));
    RealMatrix covariance =
        MatrixUtils.inverse(prior.add(x.transpose().multiply(weight).multiply(x)));
    RealVector told =
        prior
            .operate(new ArrayRealVector(expected, false))
            .add(x.transpose().multiply(weight).operate(y));
    return new RegimeFit(
        numbers(closed.numbers()), covariance.operate(told).toArray(), covariance.getData());
  }

  /** Returns how the closed line may differ from the open one: in level at the middle, in slope. */
  private static RealMatrix room(double levelSd, double slopeSd, double middle) {
    double slope = slopeSd * slopeSd;
    return new Array2DRowRealMatrix(
        new double[][] {
          {levelSd * levelSd + slope * middle * middle, -slope * middle},
          {-slope * middle, slope}
        },
        false);
  }

  private static double middleOf(RealMatrix x) {
    return Arrays.stream(x.getColumn(1)).average().orElseThrow();
  }

  private static RealMatrix errors(List<Weighed> weighed, RegimeFit closed, RealMatrix x) {
    int n = weighed.size();
    double own = closed.numbers().residualSd() * closed.numbers().residualSd();
    double level = EXPECTED_SLOPE * EXPECTED_SLOPE * COHORT_SD * COHORT_SD;
    double growth = EXPECTED_SLOPE * EXPECTED_SLOPE * COHORT_SLOPE_SD * COHORT_SLOPE_SD;
    double middle = middleOf(x);
    int[] cohort = new int[n];
    for (int i = 1; i < n; i++) {
      Duration apart = Duration.between(weighed.get(i - 1).weighedAt(), weighed.get(i).weighedAt());
      cohort[i] = cohort[i - 1] + (apart.compareTo(COHORT) < 0 ? 0 : 1);
    }
    RealMatrix errors = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double off = (x.getEntry(i, 1) - middle) * (x.getEntry(j, 1) - middle);
        double shared = cohort[i] == cohort[j] ? level + growth * off : 0;
        errors.setEntry(i, j, shared + (i == j ? own : 0));
      }
    }
    return errors;
  }

  /** Returns the numbers with the mean over the median as of normal departures. */
  private static RegimeFit.Numbers numbers(RegimeFit.Numbers n) {
    return new RegimeFit.Numbers(
        n.terms(),
        n.estimator() + ", cohorts apart",
        n.residualSd(),
        n.degreesOfFreedom(),
        Math.exp(n.residualSd() * n.residualSd() / 2),
        n.weighings(),
        n.leftOut(),
        n.agreement(),
        n.validity());
  }
}
