// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.LocalDate;

/**
 * How a regime of a grader stands on an evening.
 *
 * @param crop the crop
 * @param regime of the fit
 * @param weighings that it was fitted on
 * @param medianErrorShare median error of a plant left out in turn, as a share of its weight
 * @param lastWeighed day of the last weighing that it knows
 * @param ageDays days from then to the evening
 * @param check what the weighings since say
 */
public record GraderHealth(
    String crop,
    Regime regime,
    int weighings,
    double medianErrorShare,
    LocalDate lastWeighed,
    long ageDays,
    GraderCheck check) {
  /** Days after which a grader is to be checked by fresh weighings; a working value: a cycle. */
  private static final long STALE_DAYS = 28;

  /** Says whether fresh weighings are wanted: it is old, or those there are speak against it. */
  public boolean wantsWeighings() {
    return ageDays > STALE_DAYS
        || (check.weighings() > 0 && check.advice() != GraderCheck.Advice.KEEP);
  }

  /** Returns what to do, such as {@code keep}. */
  public String advice() {
    boolean unchecked = check.weighings() == 0;
    GraderCheck.Advice untold =
        ageDays > STALE_DAYS ? GraderCheck.Advice.WEIGH : GraderCheck.Advice.KEEP;
    return (unchecked ? untold : check.advice()).word();
  }

  /** Returns why, in words. */
  public String why() {
    return check.weighings() > 0
        ? check.why()
        : ageDays > STALE_DAYS
            ? "no plant was weighed for " + ageDays + " days"
            : "fitted " + ageDays + " days ago, nothing weighed since";
  }
}
