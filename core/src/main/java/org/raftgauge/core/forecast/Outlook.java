// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;
import org.raftgauge.core.book.Planting;

/**
 * A plant's size on the coming days: ln area (cm2) as its curve gives it, whether or not the canopy
 * closes.
 *
 * @param plant its id
 * @param planting where it stands; tells raft, pond, crop and variety
 * @param closed whether its site was closed when last seen
 * @param ledByWeights whether weights of past cycles led its curve after closure, through the
 *     grader's line
 * @param ageDays days on its clock on the evening
 * @param growth of its cohort, shared with the others
 * @param days one for each day, day 0 being the evening
 */
record Outlook(
    String plant,
    Planting planting,
    boolean closed,
    boolean ledByWeights,
    double ageDays,
    CohortGrowth growth,
    List<Size> days) {
  Outlook {
    days = List.copyOf(days);
  }

  /**
   * Its size on a day.
   *
   * @param lnArea expected ln area
   * @param lnWeighed expected ln area at which the grader's line gives its weight; the same but
   *     where weights led its curve
   * @param ownSd standard deviation of what is not shared with its cohort
   */
  record Size(double lnArea, double lnWeighed, double ownSd) {
    Size(double lnArea, double ownSd) {
      this(lnArea, lnArea, ownSd);
    }
  }

  /** Returns the standard deviation of the curve's growth that its cohort shares, by a day. */
  double curveSd(int day) {
    return (ledByWeights ? growth.weighedSd() : growth.curveSd()).get(day);
  }
}
