// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.reference.PastCycle;
import org.raftgauge.core.reference.SmoothReference;

/**
 * All cohorts of a crop and variety on one clock, past and present: what a cohort can be held
 * against besides itself.
 *
 * <p>A cycle is past for a cohort if it had ended when that began, or began two weeks before it.
 */
final class PastCycles {
  private static final long OLDER_DAYS = 14;
  private static final long REFRESH_DAYS = 7;
  private static final int FEWEST_LEVELS = 4;
  private static final int FEWEST_OTHERS = 3;
  private static final double LEAST_SEASON_SD = 0.05;
  private static final long LIVING_DAYS = 4;

  private final Optional<Yardstick> book;
  private final List<Cohort> cohorts = new ArrayList<>();

  /**
   * @param book the crop's curve in the book, where given
   */
  PastCycles(Optional<Yardstick> book) {
    this.book = book;
  }

  void add(Cohort cohort) {
    cohorts.add(cohort);
  }

  /** A shift of ln(area) with its standard deviation. */
  record Shift(double ln, double sd) {}

  /** A yardstick with the evening on which it was made. */
  record Made(Optional<Yardstick> yardstick, LocalDate on) {
    boolean fresh(LocalDate evening) {
      return evening.isBefore(on.plusDays(REFRESH_DAYS));
    }
  }

  /** Makes a cohort's yardstick from what is known on an evening. */
  Made yardstick(Cohort cohort, LocalDate evening) {
    List<PastCycle> past =
        cohorts.stream()
            .filter(other -> past(other, cohort))
            .map(Cohort::goodLevels)
            .filter(levels -> levels.size() >= FEWEST_LEVELS)
            .map(PastCycles::cycle)
            .toList();
    return new Made(SmoothReference.of(past).map(Yardstick::of).or(() -> book), evening);
  }

  private static boolean past(Cohort other, Cohort cohort) {
    boolean older = !other.since().plusDays(OLDER_DAYS).isAfter(cohort.since());
    boolean ended =
        other.since().isBefore(cohort.since())
            && other.lastSeen().filter(day -> day.isBefore(cohort.since())).isPresent();
    return older || ended;
  }

  private static PastCycle cycle(List<PatchLevel> levels) {
    return PastCycle.of(
        levels.stream().mapToDouble(PatchLevel::age).toArray(),
        levels.stream().mapToDouble(PatchLevel::lnArea).toArray());
  }

  /**
   * Returns what the other cohorts that grow now have in common against their yardsticks: the
   * season, mostly. Where there are too few, none is known but that cycles differ.
   */
  Shift season(Cohort cohort, Yardstick yardstick) {
    double[] others =
        cohorts.stream()
            .filter(c -> c != cohort && livesWith(c, cohort))
            .flatMap(c -> c.shift().stream())
            .mapToDouble(Double::doubleValue)
            .toArray();
    if (others.length < FEWEST_OTHERS) {
      return new Shift(0, yardstick.sd());
    }
    RobustCentre centre = RobustCentre.of(others);
    double spread = Math.max(LEAST_SEASON_SD, centre.spread());
    double sd = spread * Math.sqrt(1 + 1.2 / others.length);
    double prior = 1 / (yardstick.sd() * yardstick.sd());
    double told = 1 / (sd * sd);
    // The season's prior is that cycles differ; the cohorts of now say by how much they do.
    return new Shift(centre.centre() * told / (told + prior), Math.min(sd, yardstick.sd()));
  }

  private static boolean livesWith(Cohort other, Cohort cohort) {
    return other
        .lastSeen()
        .flatMap(day -> cohort.lastSeen().map(now -> !day.plusDays(LIVING_DAYS).isBefore(now)))
        .orElse(false);
  }
}
