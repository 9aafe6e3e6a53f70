// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.raftgauge.core.reference.HouseClimate;
import org.raftgauge.core.reference.PastCycle;
import org.raftgauge.core.reference.SmoothReference;
import org.raftgauge.core.reference.ThermalTime;

/**
 * All cohorts of a crop and variety on one clock, past and present: what a cohort can be held
 * against besides itself.
 *
 * <p>Cycles are compared on days, or on degree-days where the book's temperatures cover them and
 * leaving out one cycle after another shows that the others foretell it better so.
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
  private static final double NIGHT_DAYS = 2;

  private final Optional<Yardstick> book;
  private final HouseClimate climate;
  private final List<Cohort> cohorts = new ArrayList<>();

  /**
   * @param book the crop's curve in the book, where given
   * @param climate the book's daily temperatures
   */
  PastCycles(Optional<Yardstick> book, HouseClimate climate) {
    this.book = book;
    this.climate = climate;
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
    List<Cohort> past =
        cohorts.stream()
            .filter(other -> past(other, cohort))
            .filter(other -> other.goodLevels().size() >= FEWEST_LEVELS)
            .toList();
    Optional<Yardstick> onDegreeDays =
        warmth(cohort, evening).isPresent() ? onDegreeDays(cohort, past) : Optional.empty();
    return new Made(
        onDegreeDays.or(() -> SmoothReference.of(onDays(past)).map(Yardstick::of)).or(() -> book),
        evening);
  }

  /** Returns the degree-days of a cohort past an evening, where all its days are known. */
  private Optional<Double> warmth(Cohort cohort, LocalDate evening) {
    // A farm's day reaches into the next.
    double age = Math.max(0, ChronoUnit.DAYS.between(cohort.since(), evening)) + NIGHT_DAYS;
    return climate.degreeDays(cohort.since(), age);
  }

  /** Returns a yardstick on degree-days where the cycles that have them say that it is better. */
  private Optional<Yardstick> onDegreeDays(Cohort cohort, List<Cohort> past) {
    List<Cohort> known =
        past.stream()
            .filter(other -> other.lastSeen().flatMap(day -> warmth(other, day)).isPresent())
            .toList();
    List<PastCycle> warm =
        known.stream()
            .map(c -> cycle(c, l -> climate.degreeDays(c.since(), l.age()).orElseThrow()))
            .toList();
    return ThermalTime.choose(onDays(known), warm)
        .filter(choice -> choice.axis() == ThermalTime.Axis.DEGREE_DAYS)
        .flatMap(choice -> SmoothReference.of(warm))
        .map(cycles -> Yardstick.of(cycles, age -> climate.degreeDays(cohort.since(), age)));
  }

  private static List<PastCycle> onDays(List<Cohort> past) {
    return past.stream().map(c -> cycle(c, PatchLevel::age)).toList();
  }

  private static boolean past(Cohort other, Cohort cohort) {
    boolean older = !other.since().plusDays(OLDER_DAYS).isAfter(cohort.since());
    boolean ended =
        other.since().isBefore(cohort.since())
            && other.lastSeen().filter(day -> day.isBefore(cohort.since())).isPresent();
    return older || ended;
  }

  private static PastCycle cycle(Cohort cohort, ToDoubleFunction<PatchLevel> clock) {
    List<PatchLevel> levels = cohort.goodLevels();
    return PastCycle.of(
        levels.stream().mapToDouble(clock).toArray(),
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
