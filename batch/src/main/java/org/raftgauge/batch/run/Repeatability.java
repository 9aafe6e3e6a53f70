// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.EveningRule;
import org.raftgauge.core.history.Shot;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** How well a raft's photo that counts agrees with the better of those it replaced that evening. */
final class Repeatability {
  private final Map<String, List<Look>> replaced = new TreeMap<>();
  private final Farm farm;

  private record Look(Shot shot, RaftMeasure raft) {}

  /** Takes settled photos, the run's and the history's of the same evenings. */
  Repeatability(List<Settled> photos, Farm farm) {
    this.farm = farm;
    for (Settled settled : photos) {
      for (int place = 0; place < settled.rafts().size(); place++) {
        if (settled.rafts().get(place).kind() == Settled.Kind.REPLACED) {
          RaftMeasure raft = settled.photo().rafts().get(place);
          replaced
              .computeIfAbsent(key(settled.photo(), raft), k -> new ArrayList<>())
              .add(new Look(shot(settled.photo(), raft), raft));
        }
      }
    }
  }

  /** Returns the standard deviation of ln(area) of one photo, where there was a second photo. */
  OptionalDouble ln(PhotoMeasure photo, RaftMeasure raft) {
    if (raft.raft().isEmpty() || photo.takenAt().isEmpty()) {
      return OptionalDouble.empty();
    }
    List<Look> others = replaced.getOrDefault(key(photo, raft), List.of());
    if (others.isEmpty()) {
      return OptionalDouble.empty();
    }
    Shot best = EveningRule.best(others.stream().map(Look::shot).toList());
    Optional<Look> second = others.stream().filter(l -> l.shot().equals(best)).findFirst();
    return EveningRule.repeatabilityLn(areas(raft), areas(second.orElseThrow().raft()));
  }

  /**
   * Says what of an evening's other photos speaks against the one that counts.
   *
   * @param photo the photo that counts
   * @param raft what it says of a raft
   * @return words, or an empty text
   */
  String contradiction(PhotoMeasure photo, RaftMeasure raft) {
    for (Look other : replaced.getOrDefault(key(photo, raft), List.of())) {
      OptionalDouble times = EveningRule.contradiction(areas(raft), areas(other.raft()));
      if (times.isPresent()) {
        return String.format(
            Locale.ROOT,
            "two photos of this evening contradict each other: %s, which counts, and %s, in which"
                + " most plants differ by a factor of %.1f or more; see whether both show this raft, for one"
                + " tag may be on two boards",
            photo.photo(),
            other.shot().photo(),
            times.getAsDouble());
      }
    }
    return "";
  }

  private String key(PhotoMeasure photo, RaftMeasure raft) {
    return farm.evening(photo.takenAt().orElseThrow()) + " " + raft.raft().orElseThrow();
  }

  static Shot shot(PhotoMeasure photo, RaftMeasure raft) {
    Instant at = photo.takenAt().orElseThrow().toInstant();
    return new Shot(photo.photo(), at, raft.quality());
  }

  private static Map<SiteId, Double> areas(RaftMeasure raft) {
    Map<SiteId, Double> areas = new HashMap<>();
    for (SiteMeasure site : raft.sites()) {
      if (site.held().isEmpty() && site.projectedAreaCm2().isPresent()) {
        areas.put(site.site(), site.projectedAreaCm2().getAsDouble());
      }
    }
    return areas;
  }
}
