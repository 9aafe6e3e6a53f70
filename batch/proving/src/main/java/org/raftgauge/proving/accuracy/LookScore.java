// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

/**
 * How a run did under one look.
 *
 * @param look the condition, habit or whatever the sites are grouped by
 * @param open open sites: relative error of the projected area
 * @param overlapped overlapped sites: relative error of the visible area
 * @param empty empty sites: area that is not there
 */
public record LookScore(String look, Errors open, Errors overlapped, FalseArea empty) {

  /**
   * Relative errors of measurable sites.
   *
   * @param sites number of sites by the truth
   * @param missed sites without an answer: held, refused, or flagged closed though open
   * @param biasShare mean of (answer - truth) / truth over the answered sites; 0 without any
   * @param medianShare median of |error|; misses past the allowance count as 1 (100 %)
   * @param p95Share 95th percentile of the same
   * @param medianCm2 median of |answer - truth| over the answered sites, cm2; 0 without any
   * @param p95Cm2 95th percentile of the same
   */
  public record Errors(
      int sites,
      int missed,
      double biasShare,
      double medianShare,
      double p95Share,
      double medianCm2,
      double p95Cm2) {}

  /**
   * Area found where no plant stands.
   *
   * @param sites number of empty sites by the truth
   * @param missed those without an answer
   * @param medianCm2 median area, cm2
   * @param largestCm2 largest area, cm2
   * @param over2Cm2 number of sites with more than 2 cm2
   */
  public record FalseArea(
      int sites, int missed, double medianCm2, double largestCm2, int over2Cm2) {}
}
