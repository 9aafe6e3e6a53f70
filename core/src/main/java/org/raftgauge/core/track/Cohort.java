// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Plantings of the same crop, variety and layout that began within two days of each other: what is
 * expected of its plants, evening by evening.
 *
 * <p>The expected ln(area) of a raft's plants is the weighted median over the other rafts' latest
 * levels, each carried to the same age by the cohort's growth rate; a median, so that a fault on
 * some rafts does not become the norm. With past cycles that level is told as their shape with a
 * shift, which is what tonight's cohort has in common: winter is not sickness. A raft that is alone
 * is held against past cycles or the crop's curve, and its plants against each other; without
 * either, against its own plants.
 */
final class Cohort {

  private final LocalDate since;
  private final PastCycles cycles;
  private final List<Patch> patches = new ArrayList<>();
  private Optional<PastCycles.Made> made = Optional.empty();
  private final CohortRate growth = new CohortRate();
  private final CarriedLevels latest = new CarriedLevels(patches, growth);

  /**
   * @param since the day that its ages count from
   * @param cycles all cohorts of its kind
   */
  Cohort(LocalDate since, PastCycles cycles) {
    this.since = since;
    this.cycles = cycles;
    cycles.add(this);
  }

  LocalDate since() {
    return since;
  }

  List<Patch> patches() {
    return patches;
  }

  /** Returns the growth rate of its plants at their present age, 1/day. */
  double rate() {
    return growth.rate();
  }

  /** Returns how well the mean rate until the next look is known, 1/day. */
  double rateSdAhead(double days) {
    return growth.sdAhead(days);
  }

  /**
   * Brings what it is held against, and its growth rate, up to an evening.
   *
   * @param tonight its levels of the evening, at least one
   */
  void refresh(List<Level> tonight) {
    LocalDate evening = tonight.get(0).level().evening();
    if (made.filter(m -> m.fresh(evening)).isEmpty()) {
      made = Optional.of(cycles.yardstick(this, evening));
    }
    double age = tonight.stream().mapToDouble(l -> l.level().age()).average().orElseThrow();
    growth.carry(age, yardstick());
    changed();
  }

  /** Forgets what was worked out from its patches. */
  void changed() {
    latest.changed();
  }

  /** Returns what is known of its kind besides itself, as of the last evening it was seen. */
  Optional<Yardstick> yardstick() {
    return made.flatMap(PastCycles.Made::yardstick);
  }

  /** Returns all levels of its patches that are not doubted. */
  List<PatchLevel> goodLevels() {
    return patches.stream().flatMap(p -> p.levels().stream()).filter(l -> !l.doubtful()).toList();
  }

  /** Returns the last evening on which any of it was seen. */
  Optional<LocalDate> lastSeen() {
    return patches.stream()
        .flatMap(p -> p.last().stream())
        .map(PatchLevel::evening)
        .max(Comparator.naturalOrder());
  }

  /** Returns by how much it departs from its yardstick as last seen, ln(area). */
  Optional<Double> shift() {
    double[] off =
        patches.stream()
            .flatMap(p -> p.lastGood().stream())
            .flatMap(l -> offOf(l).stream())
            .mapToDouble(Double::doubleValue)
            .toArray();
    return off.length == 0 ? Optional.empty() : Optional.of(RobustCentre.median(off));
  }

  private Optional<Double> offOf(PatchLevel level) {
    return yardstick().flatMap(y -> y.lnArea(level.age())).map(ln -> level.lnArea() - ln);
  }

  /**
   * Learns the growth rate from tonight's levels, before they are added to the patches.
   *
   * @param tonight good levels with their patches
   */
  void learnRate(List<Level> tonight) {
    growth.learn(tonight, yardstick());
    changed();
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
    Others others = which -> latest.withoutRaft(raft, which, age);
    return others
        .of(CarriedLevels.Which.SOUND)
        .map(m -> shifted(m, age))
        .or(
            () ->
                others.of(CarriedLevels.Which.ANY).isEmpty() || sound(raft)
                    ? alone(raft, age)
                    : Optional.empty())
        .or(() -> others.of(CarriedLevels.Which.ANY).map(m -> shifted(m, age)));
  }

  /** The middle of patches that are not what is judged. */
  private interface Others {
    Optional<WeightedMiddle> of(CarriedLevels.Which which);
  }

  private boolean sound(String raft) {
    return patches.stream().noneMatch(p -> p.raft().equals(raft) && p.faulty());
  }

  /**
   * Returns what is expected of a raft as a whole, itself left out in any case.
   *
   * @param raft left out
   * @param age days
   * @return the expected, or nothing where there is nothing else
   */
  Optional<Expected> expectedOfRaft(String raft, double age) {
    return ofOthers(which -> latest.withoutRaft(raft, which, age), age);
  }

  /**
   * Returns what is expected of a pond's plants from the other ponds, or else from outside.
   *
   * @param pond left out
   * @param age days
   * @return the expected, or nothing where there is nothing else
   */
  Optional<Expected> expectedElsewhere(String pond, double age) {
    return ofOthers(which -> latest.withoutPond(pond, which, age), age);
  }

  private Optional<Expected> ofOthers(Others others, double age) {
    return others
        .of(CarriedLevels.Which.SOUND)
        .map(m -> shifted(m, age))
        .or(() -> outside(age))
        .or(() -> others.of(CarriedLevels.Which.ANY).map(m -> shifted(m, age)));
  }

  /** Returns what past cycles or the book alone let expect, the season taken in. */
  private Optional<Expected> outside(double age) {
    return yardstick()
        .flatMap(
            y ->
                y.lnArea(age)
                    .map(
                        ln -> {
                          PastCycles.Shift season = cycles.season(this, y);
                          return new Expected(
                              ln + season.ln(),
                              season.sd(),
                              y.rate(age).orElse(rate()),
                              y.basis(),
                              OptionalDouble.of(season.ln()));
                        }));
  }

  /** Returns what is expected of the plants of a raft that is alone. */
  private Optional<Expected> alone(String raft, double age) {
    Optional<PatchLevel> own = latest.of(raft, age);
    Optional<Expected> outside = outside(age);
    if (outside.isEmpty()) {
      return own.map(
          level ->
              new Expected(
                  latest.carried(level, age),
                  CarriedLevels.ownSd(level),
                  rate(),
                  Basis.RAFT,
                  OptionalDouble.empty()));
    }
    return !sound(raft) || own.isEmpty() ? outside : own.map(l -> between(outside.get(), l, age));
  }

  /** Weighs what is known from outside with the raft's own level. */
  private Expected between(Expected outside, PatchLevel own, double age) {
    double told = 1 / square(outside.standardError());
    double seen = 1 / square(CarriedLevels.ownSd(own));
    double ln = (told * outside.lnArea() + seen * latest.carried(own, age)) / (told + seen);
    double shift = outside.shift().orElse(0) + ln - outside.lnArea();
    return new Expected(
        ln, 1 / Math.sqrt(told + seen), rate(), outside.basis(), OptionalDouble.of(shift));
  }

  /** Tells a level as past cycles with a shift, where there are any. */
  private Expected shifted(WeightedMiddle middle, double age) {
    double ln = middle.centre();
    double error = middle.standardError();
    return yardstick()
        .filter(y -> y.basis().onCycles())
        .flatMap(
            y ->
                y.lnArea(age)
                    .map(
                        c -> new Expected(ln, error, rate(), y.basis(), OptionalDouble.of(ln - c))))
        .orElseGet(() -> new Expected(ln, error, rate(), Basis.COHORT, OptionalDouble.empty()));
  }

  private static double square(double x) {
    return x * x;
  }
}
