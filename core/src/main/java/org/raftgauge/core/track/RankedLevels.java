// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Levels of patches in the order of their size, summed up so that their {@link WeightedMiddle}
 * without one of them costs no new look at all: each raft of a cohort is held against all others.
 */
final class RankedLevels {
  private final List<Ranked> ranked;
  private final Map<String, Integer> rafts = new HashMap<>();
  private final Map<String, List<Integer>> ponds = new HashMap<>();
  private final Map<String, Optional<WeightedMiddle>> withoutPond = new HashMap<>();
  private final double[] weights;
  private final double[] moments;

  /** A patch with its level. */
  record Ranked(Patch patch, WeightedMiddle.Weighted level) {}

  /**
   * @param levels of patches, each of another raft, in any order
   */
  RankedLevels(List<Ranked> levels) {
    this.ranked =
        levels.stream().sorted(Comparator.comparingDouble(r -> r.level().value())).toList();
    int n = ranked.size();
    this.weights = new double[n + 1];
    this.moments = new double[n + 1];
    for (int i = 0; i < n; i++) {
      Ranked each = ranked.get(i);
      rafts.put(each.patch().raft(), i);
      ponds.computeIfAbsent(each.patch().pond(), p -> new ArrayList<>()).add(i);
      weights[i + 1] = weights[i] + each.level().weight();
      moments[i + 1] = moments[i] + each.level().weight() * each.level().value();
    }
  }

  /** Returns the middle of all levels but a raft's; nothing where there is no other. */
  Optional<WeightedMiddle> withoutRaft(String raft) {
    return without(Optional.ofNullable(rafts.get(raft)).map(List::of).orElse(List.of()));
  }

  /** Returns the middle of all levels but a pond's; nothing where there is no other. */
  Optional<WeightedMiddle> withoutPond(String pond) {
    return withoutPond.computeIfAbsent(pond, p -> without(ponds.getOrDefault(p, List.of())));
  }

  /** Returns the middle of all levels but those at some places, which ascend. */
  private Optional<WeightedMiddle> without(List<Integer> places) {
    if (places.size() == ranked.size()) {
      return Optional.empty();
    }
    double total = below(ranked.size(), places);
    double inner = momentUpTo(0.75 * total, places) - momentUpTo(0.25 * total, places);
    return Optional.of(WeightedMiddle.of(inner / (0.5 * total), total));
  }

  /** Returns the moment of the smallest levels that weigh so much, some places left out. */
  private double momentUpTo(double weight, List<Integer> without) {
    int lo = 0;
    int hi = ranked.size() - 1;
    while (lo < hi) {
      int middle = (lo + hi + 1) >>> 1;
      if (below(middle, without) <= weight) {
        lo = middle;
      } else {
        hi = middle - 1;
      }
    }
    double left = 0;
    for (int i = 0; i < without.size() && without.get(i) < lo; i++) {
      left += moments[without.get(i) + 1] - moments[without.get(i)];
    }
    return moments[lo] - left + (weight - below(lo, without)) * ranked.get(lo).level().value();
  }

  /** Returns the weight of the levels before a place, some left out. */
  private double below(int place, List<Integer> without) {
    double left = 0;
    for (int i = 0; i < without.size() && without.get(i) < place; i++) {
      left += ranked.get(without.get(i)).level().weight();
    }
    return weights[place] - left;
  }
}
