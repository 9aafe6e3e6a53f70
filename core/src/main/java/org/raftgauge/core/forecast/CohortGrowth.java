// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the plants of a cohort share on the coming days.
 *
 * @param number of the cohort, from 0
 * @param since the day that its ages count from
 * @param dayFraction local clock of its last photos, as a fraction of the day
 * @param curveSd standard deviation of the growth since the plants were last seen open, shared by
 *     the cohort, of ln area, for each day
 * @param weighedSd the same for closed plants that past cycles' weights lead, of the size at which
 *     the grader's line gives their weight; the line's own error is in it
 * @param weatherSd that of weather, shared by all cohorts, for each day
 * @param rough whether no past cycles bear the curve
 * @param daysSinceSeen days from its last photos to the evening
 * @param doubt what a reader must know of the curve, in words; nothing where it reaches
 * @param reachDays days from the evening that the photos bear
 */
record CohortGrowth(
    int number,
    LocalDate since,
    double dayFraction,
    List<Double> curveSd,
    List<Double> weighedSd,
    List<Double> weatherSd,
    boolean rough,
    double daysSinceSeen,
    Optional<String> doubt,
    int reachDays) {
  CohortGrowth {
    curveSd = List.copyOf(curveSd);
    weighedSd = List.copyOf(weighedSd);
    weatherSd = List.copyOf(weatherSd);
  }

  double sharedSd(int day) {
    return Math.hypot(curveSd.get(day), weatherSd.get(day));
  }
}
