// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/**
 * What is believed on an evening of a share of the expected: a normal distribution of its log.
 *
 * @param lnShare its middle, ln(share)
 * @param sd its standard deviation
 */
record Belief(double lnShare, double sd) {

  /** Returns the probability of a share below {@code ln}, a ln(share). */
  double below(double ln) {
    return Normal.below((ln - lnShare) / sd);
  }

  /** Returns the ln(share) with a probability, 0 to 1, below it. */
  double quantile(double probability) {
    return lnShare + Normal.quantile(probability) * sd;
  }
}
