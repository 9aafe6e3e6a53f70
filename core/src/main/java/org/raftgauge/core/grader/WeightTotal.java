// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.raftgauge.core.agreement.LinearFit;

/**
 * The total weight of many plants. What single plants miss by averages out; what the calibration
 * misses by is shared by all of them and does not.
 *
 * <p>{@code cov_ij = E_i E_j (exp(v_ij + s^2 [i = j]) - 1)} with {@code v_ij = x_i' V x_j}, as for
 * correlated lognormal numbers; the interval is that of a lognormal number of this mean and
 * standard deviation.
 *
 * @param meanG expected total, g
 * @param sharedSdG standard deviation by the calibration alone, g
 * @param sdG standard deviation of the total, g
 * @param degreesOfFreedom of the calibration
 */
public record WeightTotal(double meanG, double sharedSdG, double sdG, int degreesOfFreedom) {

  /**
   * Adds up.
   *
   * @param fit the grader's fit
   * @param plants rows of its design, one for each plant, from {@link RegimeFit#design}
   * @return the total with the errors
   */
  public static WeightTotal of(RegimeFit fit, List<double[]> plants) {
    return of(fit, plants, fit.numbers().smearing());
  }

  /**
   * Adds up with another way back from logarithms.
   *
   * @param fit the grader's fit
   * @param plants rows of its design
   * @param factor mean over median weight of plants alike, such as {@code exp(s^2 / 2)}
   * @return the total with the errors
   */
  static WeightTotal of(RegimeFit fit, List<double[]> plants, double factor) {
    double[] coefficients = fit.coefficients();
    double[][] covariance = fit.covariance();
    double s2 = fit.numbers().residualSd() * fit.numbers().residualSd();
    int n = plants.size();
    double[] mean = new double[n];
    double total = 0;
    for (int i = 0; i < n; i++) {
      double own = LinearFit.form(plants.get(i), covariance, plants.get(i));
      mean[i] = Math.exp(LinearFit.dot(plants.get(i), coefficients) + own / 2) * factor;
      total += mean[i];
    }
    double shared = 0;
    double single = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double v = LinearFit.form(plants.get(i), covariance, plants.get(j));
        shared += mean[i] * mean[j] * Math.expm1(v);
        single += i == j ? mean[i] * mean[i] * (Math.exp(v + s2) - Math.exp(v)) : 0;
      }
    }
    return new WeightTotal(
        total,
        Math.sqrt(Math.max(0, shared)),
        Math.sqrt(Math.max(0, shared + single)),
        fit.numbers().degreesOfFreedom());
  }

  /**
   * Returns an end of an interval of the total.
   *
   * @param probability that the total is under it, such as 0.1 and 0.9 for 80 %
   * @return g
   */
  public double quantileG(double probability) {
    if (meanG <= 0) {
      return 0;
    }
    double ln2 = Math.log1p(sdG * sdG / (meanG * meanG));
    double t = new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    return meanG * Math.exp(t * Math.sqrt(ln2) - ln2 / 2);
  }
}
