// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Optional;

/**
 * The lowest limit of ln(share) by which what is believed on two evenings would be called lagging:
 * credible on both, or more than credible on the last. Worked out when it is asked for: most
 * evenings of a history are not asked, and what is believed on them is kept as plain numbers, for a
 * large farm's would fill the memory.
 */
final class LagLimit {
  private final TrackRules rules;
  private int evenings;
  private double lnShareBefore;
  private double sdBefore;
  private double lnShareNow;
  private double sdNow;

  LagLimit(TrackRules rules) {
    this.rules = rules;
  }

  /** Takes what is believed on an evening. */
  void take(PlantTrack track) {
    lnShareBefore = lnShareNow;
    sdBefore = sdNow;
    lnShareNow = track.share();
    sdNow = track.shareSd();
    evenings++;
  }

  /** Returns what is believed on the last evening. */
  Optional<Belief> now() {
    return evenings > 0 ? Optional.of(new Belief(lnShareNow, sdNow)) : Optional.empty();
  }

  /** Returns what was believed on the evening before. */
  Optional<Belief> before() {
    return evenings > 1 ? Optional.of(new Belief(lnShareBefore, sdBefore)) : Optional.empty();
  }

  /** Returns the limit; infinite before anything was taken. */
  double lnShare() {
    double atOnce = quantile(now(), rules.believedAtOnce());
    return Math.min(
        atOnce, Math.max(quantile(before(), rules.believed()), quantile(now(), rules.believed())));
  }

  private static double quantile(Optional<Belief> belief, double probability) {
    return belief.map(b -> b.quantile(probability)).orElse(Double.POSITIVE_INFINITY);
  }
}
