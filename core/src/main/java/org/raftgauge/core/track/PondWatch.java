// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.HashMap;
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
  private static final double RAFT_SD = 0.06;

  /** Ponds of many rafts are alike: the limit lies midway between healthy and a loss of 15 %. */
  private static final GroupTrack.Kind POND = new GroupTrack.Kind(0.04, 0.92);

  /** Rafts of some plants differ more, for good: the limit is two of their spreads below. */
  private static final GroupTrack.Kind RAFT = new GroupTrack.Kind(RAFT_SD, 0.88);

  private final Map<String, GroupTrack> ponds = new TreeMap<>();
  private final Map<Patch, GroupTrack> rafts = new HashMap<>();
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
          .expectedOfRaft(patch.raft(), level.level().age())
          .ifPresent(
              e ->
                  track(rafts, patch, RAFT)
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
      track(ponds, pond, POND)
          .take(
              (double) levels.get(0).level().evening().toEpochDay(),
              sum / weights,
              new PlantTrack.ErrorOf(Math.sqrt(1 / weights), Math.sqrt(reference / weights)),
              rate / weights);
    }
  }

  private <K> GroupTrack track(Map<K, GroupTrack> tracks, K which, GroupTrack.Kind kind) {
    return tracks.computeIfAbsent(which, k -> new GroupTrack(rules, kind));
  }

  Optional<GroupTrack> pond(String pond) {
    return Optional.ofNullable(ponds.get(pond));
  }

  Optional<GroupTrack> raft(Patch patch) {
    return Optional.ofNullable(rafts.get(patch));
  }

  /** Says whether a patch's raft or pond has been found to lag. */
  boolean lags(Patch patch) {
    return raft(patch).filter(GroupTrack::lagging).isPresent()
        || pond(patch.pond()).filter(GroupTrack::lagging).isPresent();
  }

  private static double square(double x) {
    return x * x;
  }
}
