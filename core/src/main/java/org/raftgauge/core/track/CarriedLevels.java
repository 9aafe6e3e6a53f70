// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The latest levels of a cohort's patches, carried to one age by its growth rate. */
final class CarriedLevels {
  /** How much healthy rafts differ as a whole, ln(area). */
  private static final double RAFT_SD = 0.05;

  /** How far the plants of a raft that is alone may lie from its own middle, as a whole. */
  private static final double OWN_SD = 2 * RAFT_SD;

  private static final double PLANT_SD = 0.2;
  private static final double FAR_AGE_DAYS = 4;

  /** Ages so near to each other share one ranking; the errors of carried levels hardly differ. */
  private static final double STEP_DAYS = 0.05;

  private final List<Patch> patches;
  private final CohortRate growth;
  private final Map<Step, RankedLevels> ranked = new HashMap<>();

  /** Which levels are ranked at which age, in steps. */
  private record Step(Which which, long steps) {}

  /**
   * @param patches of the cohort; those added later count too
   * @param growth its growth rate, as it is learnt
   */
  CarriedLevels(List<Patch> patches, CohortRate growth) {
    this.patches = patches;
    this.growth = growth;
  }

  /** Returns the error of a raft's own level: a few plants do not tell where its middle lies. */
  static double ownSd(PatchLevel own) {
    return Math.hypot(OWN_SD, PLANT_SD / Math.sqrt(own.plants()));
  }

  /** Forgets what was ranked: levels, faults or the rate have changed. */
  void changed() {
    ranked.clear();
  }

  /** Which patches are looked at. */
  enum Which {
    /** Those that are not found to lag. */
    SOUND,
    /** All. */
    ANY
  }

  /** Returns the latest level of a raft, where it is near an age. */
  Optional<PatchLevel> of(String raft, double age) {
    return patches.stream()
        .filter(p -> p.raft().equals(raft))
        .flatMap(p -> near(p, age).stream())
        .findFirst();
  }

  private static Optional<PatchLevel> near(Patch patch, double age) {
    return patch.lastGood().filter(l -> Math.abs(l.age() - age) <= FAR_AGE_DAYS);
  }

  /** Returns the weighted middle at an age of the levels of all rafts but one. */
  Optional<WeightedMiddle> withoutRaft(String raft, Which which, double age) {
    return at(which, age).withoutRaft(raft).map(m -> m.shifted(growth.rate() * past(age)));
  }

  /** Returns the weighted middle at an age of the levels of all ponds but one. */
  Optional<WeightedMiddle> withoutPond(String pond, Which which, double age) {
    return at(which, age).withoutPond(pond).map(m -> m.shifted(growth.rate() * past(age)));
  }

  /** Returns how far an age is past the step of ages for which levels are ranked. */
  private static double past(double age) {
    return age - Math.round(age / STEP_DAYS) * STEP_DAYS;
  }

  /** Ranks the levels at the step of ages nearest to an age: carrying them on keeps their order. */
  private RankedLevels at(Which which, double age) {
    return ranked.computeIfAbsent(
        new Step(which, Math.round(age / STEP_DAYS)), s -> rank(which, s.steps() * STEP_DAYS));
  }

  private RankedLevels rank(Which which, double age) {
    List<RankedLevels.Ranked> levels = new ArrayList<>();
    for (Patch patch : patches) {
      if (which == Which.ANY || !patch.faulty()) {
        near(patch, age)
            .ifPresent(l -> levels.add(new RankedLevels.Ranked(patch, weighted(l, age))));
      }
    }
    return new RankedLevels(levels);
  }

  /** Returns the ln(area) that a level has become by an age. */
  double carried(PatchLevel level, double age) {
    return level.lnArea() + growth.rate() * (age - level.age());
  }

  private WeightedMiddle.Weighted weighted(PatchLevel level, double age) {
    double away = growth.sd() * (age - level.age());
    double error = Math.hypot(level.standardError(), away);
    return new WeightedMiddle.Weighted(
        carried(level, age), 1 / (RAFT_SD * RAFT_SD + error * error));
  }
}
