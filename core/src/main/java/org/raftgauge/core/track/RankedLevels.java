// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Levels of patches in the order of their size, summed up so that their {@link WeightedMiddle}
 * without one of them costs no new look at all: each raft of a cohort is held against all others.
 */
final class RankedLevels {
  private final List<Ranked> ranked;
  private final Map<String, Integer> places = new HashMap<>();
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
      places.put(each.patch().raft(), i);
      weights[i + 1] = weights[i] + each.level().weight();
      moments[i + 1] = moments[i] + each.level().weight() * each.level().value();
    }
  }

  /** Returns the middle of all levels but a raft's; nothing where there is no other. */
  Optional<WeightedMiddle> withoutRaft(String raft) {
    int place = places.getOrDefault(raft, -1);
    int others = ranked.size() - (place < 0 ? 0 : 1);
    if (others == 0) {
      return Optional.empty();
    }
    double total = weights[ranked.size()] - weightAt(place);
    double inner = momentUpTo(0.75 * total, place) - momentUpTo(0.25 * total, place);
    return Optional.of(WeightedMiddle.of(inner / (0.5 * total), total));
  }

  /** Returns the middle of all levels but a pond's; nothing where there is no other. */
  Optional<WeightedMiddle> withoutPond(String pond) {
    return withoutPond.computeIfAbsent(pond, p -> of(patch -> !patch.pond().equals(p)));
  }

  private Optional<WeightedMiddle> of(Predicate<Patch> which) {
    List<WeightedMiddle.Weighted> levels = new ArrayList<>(ranked.size());
    for (Ranked each : ranked) {
      if (which.test(each.patch())) {
        levels.add(each.level());
      }
    }
    return levels.isEmpty() ? Optional.empty() : Optional.of(WeightedMiddle.ofSorted(levels));
  }

  private double weightAt(int place) {
    return place < 0 ? 0 : ranked.get(place).level().weight();
  }

  /** Returns the moment of the smallest levels that weigh so much, one place left out. */
  private double momentUpTo(double weight, int without) {
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
    double left = without >= 0 && without < lo ? moment(without) : 0;
    return moments[lo] - left + (weight - below(lo, without)) * ranked.get(lo).level().value();
  }

  private double moment(int place) {
    return moments[place + 1] - moments[place];
  }

  /** Returns the weight of the levels before a place, one left out. */
  private double below(int place, int without) {
    return weights[place] - (without >= 0 && without < place ? weightAt(without) : 0);
  }
}
