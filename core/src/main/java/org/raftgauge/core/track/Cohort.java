// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Plantings of the same crop, variety and layout that began within two days of each other: what is
 * expected of its plants, evening by evening.
 *
 * <p>The expected ln(area) of a raft's plants is the weighted median over the other rafts' latest
 * levels, each carried to the same age by the cohort's growth rate; a median, so that a fault on
 * some rafts does not become the norm. A raft that is alone is held against its own plants.
 */
final class Cohort {
  private static final double FIRST_RATE = 0.15;
  private static final double FIRST_RATE_SD = 0.1;
  private static final double RATE_DRIFT = 0.02;
  private static final double RAFT_SD = 0.05;
  private static final double FAR_AGE_DAYS = 4;
  private static final int FEWEST_SOUND = 3;

  private final List<Patch> patches = new ArrayList<>();
  private double rate = FIRST_RATE;
  private double rateVariance = FIRST_RATE_SD * FIRST_RATE_SD;

  List<Patch> patches() {
    return patches;
  }

  /** Returns the growth rate of its plants at their present age, 1/day. */
  double rate() {
    return rate;
  }

  double rateSd() {
    return Math.sqrt(rateVariance);
  }

  /**
   * Learns the growth rate from tonight's levels, before they are added to the patches.
   *
   * @param tonight good levels with their patches
   */
  void learnRate(List<Level> tonight) {
    double[] rates = tonight.stream().mapToDouble(Cohort::rateOf).filter(r -> r > -9).toArray();
    double days =
        tonight.stream().mapToDouble(l -> l.days()).filter(d -> d > 0).average().orElse(1);
    rateVariance += RATE_DRIFT * RATE_DRIFT * days;
    if (rates.length > 0) {
      RobustCentre centre = RobustCentre.of(rates);
      double se = centre.standardError(0.03 / days);
      double gain = rateVariance / (rateVariance + se * se);
      rate += gain * (centre.centre() - rate);
      rateVariance *= 1 - gain;
    }
  }

  private static double rateOf(Level level) {
    return level.days() > 0 && level.days() <= FAR_AGE_DAYS ? level.rate() : -10;
  }

  /** A patch with its level of tonight. */
  record Level(Patch patch, PatchLevel level) {
    double days() {
      return patch.lastGood().map(before -> level.age() - before.age()).orElse(0.0);
    }

    double rate() {
      return (level.lnArea() - patch.lastGood().orElseThrow().lnArea()) / days();
    }
  }

  /**
   * Returns what is expected of a raft's plants, from levels added so far.
   *
   * @param raft left out, unless it is alone
   * @param age days
   * @return the expected, or nothing where no level is near in age
   */
  Optional<Expected> expected(String raft, double age) {
    List<PatchLevel> others = near(age, p -> !p.raft().equals(raft));
    if (!others.isEmpty()) {
      return Optional.of(middle(others, age));
    }
    return near(age, p -> p.raft().equals(raft)).stream()
        .findFirst()
        .map(own -> carried(own, age))
        .map(level -> new Expected(level, 2 * RAFT_SD, rate, Basis.COHORT));
  }

  /**
   * Returns what is expected of a pond's plants from the other ponds alone.
   *
   * @param pond left out
   * @param age days
   * @return the expected, or nothing where the cohort is in no other pond
   */
  Optional<Expected> expectedElsewhere(String pond, double age) {
    List<PatchLevel> others = near(age, p -> !p.pond().equals(pond));
    return others.isEmpty() ? Optional.empty() : Optional.of(middle(others, age));
  }

  /** Returns the latest levels near an age, of sound rafts alone where there are enough. */
  private List<PatchLevel> near(double age, Predicate<Patch> which) {
    List<PatchLevel> sound = levels(age, which.and(p -> !p.faulty()));
    return sound.size() >= FEWEST_SOUND ? sound : levels(age, which);
  }

  private List<PatchLevel> levels(double age, Predicate<Patch> which) {
    return patches.stream()
        .filter(which)
        .flatMap(p -> p.lastGood().stream())
        .filter(l -> Math.abs(l.age() - age) <= FAR_AGE_DAYS)
        .toList();
  }

  private double carried(PatchLevel level, double age) {
    return level.lnArea() + rate * (age - level.age());
  }

  private Expected middle(List<PatchLevel> levels, double age) {
    record Weighted(double value, double weight) {}
    List<Weighted> values =
        levels.stream()
            .map(
                l -> {
                  double away = rateSd() * (age - l.age());
                  double variance = RAFT_SD * RAFT_SD + square(l.standardError()) + away * away;
                  return new Weighted(carried(l, age), 1 / variance);
                })
            .sorted(Comparator.comparingDouble(Weighted::value))
            .toList();
    double total = values.stream().mapToDouble(Weighted::weight).sum();
    double below = 0;
    double centre = 0;
    double inner = 0;
    for (Weighted each : values) {
      // The middle half, each value weighted by how much of it lies there: a smooth median.
      double from = Math.max(below, 0.25 * total);
      double to = Math.min(below + each.weight(), 0.75 * total);
      if (to > from) {
        centre += (to - from) * each.value();
        inner += to - from;
      }
      below += each.weight();
    }
    return new Expected(centre / inner, 1.15 / Math.sqrt(total), rate, Basis.COHORT);
  }

  private static double square(double x) {
    return x * x;
  }
}
