// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * What a grader says of one plant.
 *
 * @param lnMedian logarithm of the median weight of such plants, g
 * @param calibrationSd standard error of {@code lnMedian}: the grader's own, shared by all plants
 * @param residualSd spread of single plants about it, of {@code ln w}
 * @param degreesOfFreedom of both
 * @param smearing mean weight over median weight of such plants
 */
public record Prediction(
    double lnMedian,
    double calibrationSd,
    double residualSd,
    int degreesOfFreedom,
    double smearing) {

  /** Returns the median weight of such plants, g. */
  public double medianG() {
    return Math.exp(lnMedian);
  }

  /** Returns the mean weight of such plants, g: the one to add up. */
  public double meanG() {
    return medianG() * smearing;
  }

  /** Returns the standard deviation of {@code ln w} of a new plant. */
  public double sdLn() {
    return Math.hypot(calibrationSd, residualSd);
  }

  /**
   * Returns an end of the interval that holds a new plant's weight.
   *
   * @param probability that the weight is under it, such as 0.05 and 0.95 for 90 %
   * @return g
   */
  public double quantileG(double probability) {
    double t = new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    return Math.exp(lnMedian + t * sdLn());
  }
}
