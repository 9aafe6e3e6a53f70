// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;

/**
 * A forecast against what came.
 *
 * @param raft the raft
 * @param crop its crop
 * @param evening on which the forecast is made
 * @param harvestedOn the day that it was harvested
 * @param leadDays from one to the other
 * @param weightG forecast for that day, g
 * @param heads forecast to stand
 * @param harvestedG what was harvested, g, above 0
 * @param harvestedHeads what was harvested
 * @param hindsight whether the grader knew weighings later than the evening
 */
public record LookBackRow(
    String raft,
    String crop,
    LocalDate evening,
    LocalDate harvestedOn,
    int leadDays,
    Amount weightG,
    double heads,
    double harvestedG,
    int harvestedHeads,
    boolean hindsight) {

  /** Returns forecast less harvested, as a share of harvested. */
  public double errorShare() {
    return weightG.mean() / harvestedG - 1;
  }
}
