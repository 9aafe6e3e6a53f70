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
 * @param shift what is added to the plants' own curves on each day, of ln area: the way from their
 *     mean growth to that of past cycles
 * @param curveSd standard deviation of the growth since the plants were last seen open, shared by
 *     all, of ln area, for each day
 * @param weatherSd of one day's growth by which all plants depart together
 * @param daysSinceOpen days from when its plants were last seen open, on average, to the evening
 * @param daysSinceSeen days from its last photos to the evening
 * @param doubt what a reader must know of the curve, in words; nothing where it reaches
 * @param reachDays days from the evening that the photos bear
 */
record CohortGrowth(
    int number,
    LocalDate since,
    double dayFraction,
    List<Double> shift,
    List<Double> curveSd,
    double weatherSd,
    double daysSinceOpen,
    double daysSinceSeen,
    Optional<String> doubt,
    int reachDays) {
  CohortGrowth {
    shift = List.copyOf(shift);
    curveSd = List.copyOf(curveSd);
  }
}
