// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.function.Predicate;

/** The latest levels of a cohort's patches, carried to one age by its growth rate. */
final class CarriedLevels {
  /** How much healthy rafts differ as a whole, ln(area). */
  private static final double RAFT_SD = 0.05;

  /** How far the plants of a raft that is alone may lie from its own middle, as a whole. */
  private static final double OWN_SD = 2 * RAFT_SD;

  private static final double PLANT_SD = 0.2;
  private static final double FAR_AGE_DAYS = 4;

  private final List<Patch> patches;
  private final CohortRate growth;

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

  /** Returns the latest levels near an age. */
  List<PatchLevel> near(double age, Predicate<Patch> which) {
    return patches.stream()
        .filter(which)
        .flatMap(p -> p.lastGood().stream())
        .filter(l -> Math.abs(l.age() - age) <= FAR_AGE_DAYS)
        .toList();
  }

  /** Returns the ln(area) that a level has become by an age. */
  double carried(PatchLevel level, double age) {
    return level.lnArea() + growth.rate() * (age - level.age());
  }

  /** Returns the weighted middle of levels at an age. */
  WeightedMiddle middle(List<PatchLevel> levels, double age) {
    return WeightedMiddle.of(levels.stream().map(level -> weighted(level, age)).toList());
  }

  private WeightedMiddle.Weighted weighted(PatchLevel level, double age) {
    double away = growth.sd() * (age - level.age());
    double error = Math.hypot(level.standardError(), away);
    return new WeightedMiddle.Weighted(
        carried(level, age), 1 / (RAFT_SD * RAFT_SD + error * error));
  }
}
