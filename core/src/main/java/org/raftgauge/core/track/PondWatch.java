// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Follows ponds and rafts as wholes: how far their plants stand from those of other ponds, or of
 * other rafts.
 */
final class PondWatch {
  /** Spread of healthy ponds among each other, and of healthy rafts. */
  private static final double POND_SD = 0.04;

  private static final double RAFT_SD = 0.06;

  private final Map<String, GroupTrack> ponds = new TreeMap<>();
  private final Map<String, GroupTrack> rafts = new TreeMap<>();
  private final TrackRules rules;

  PondWatch(TrackRules rules) {
    this.rules = rules;
  }

  /** Takes an evening's good levels, after they were added to their patches. */
  void take(List<Cohort.Level> levels) {
    levels.stream()
        .collect(Collectors.groupingBy(l -> l.patch().pond(), TreeMap::new, Collectors.toList()))
        .forEach(this::pond);
    for (Cohort.Level level : levels) {
      Patch patch = level.patch();
      patch
          .cohort()
          .expected(patch.raft(), level.level().age())
          .filter(e -> patch.cohort().patches().size() > 1)
          .ifPresent(
              e ->
                  track(rafts, patch.raft(), RAFT_SD)
                      .take(
                          (double) level.level().evening().toEpochDay(),
                          level.level().lnArea() - e.lnArea(),
                          new PlantTrack.ErrorOf(level.level().standardError(), e.standardError()),
                          e.rate()));
    }
  }

  private void pond(String pond, List<Cohort.Level> levels) {
    double sum = 0;
    double weights = 0;
    double reference = 0;
    double rate = 0;
    for (Cohort.Level level : levels) {
      Optional<Expected> elsewhere =
          level.patch().cohort().expectedElsewhere(pond, level.level().age());
      if (elsewhere.isPresent()) {
        double weight = 1 / (square(level.level().standardError()) + RAFT_SD * RAFT_SD);
        sum += weight * (level.level().lnArea() - elsewhere.get().lnArea());
        reference += weight * square(elsewhere.get().standardError());
        rate += weight * elsewhere.get().rate();
        weights += weight;
      }
    }
    if (weights > 0) {
      track(ponds, pond, POND_SD)
          .take(
              (double) levels.get(0).level().evening().toEpochDay(),
              sum / weights,
              new PlantTrack.ErrorOf(Math.sqrt(1 / weights), Math.sqrt(reference / weights)),
              rate / weights);
    }
  }

  private GroupTrack track(Map<String, GroupTrack> tracks, String name, double healthySd) {
    return tracks.computeIfAbsent(name, n -> new GroupTrack(rules, healthySd));
  }

  Optional<GroupTrack> pond(String pond) {
    return Optional.ofNullable(ponds.get(pond));
  }

  Optional<GroupTrack> raft(String raft) {
    return Optional.ofNullable(rafts.get(raft));
  }

  /** Says whether a patch's raft or pond has been found to lag. */
  boolean lags(Patch patch) {
    return raft(patch.raft()).filter(GroupTrack::lagging).isPresent()
        || pond(patch.pond()).filter(GroupTrack::lagging).isPresent();
  }

  private static double square(double x) {
    return x * x;
  }
}
