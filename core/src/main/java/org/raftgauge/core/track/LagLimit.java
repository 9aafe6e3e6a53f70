// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Optional;

/**
 * The lowest limit of ln(share) by which what is believed on two evenings would be called lagging:
 * credible on both, or more than credible on the last. Worked out when it is asked for: most
 * evenings of a history are not asked.
 */
final class LagLimit {
  private final TrackRules rules;
  private Optional<Belief> before = Optional.empty();
  private Optional<Belief> now = Optional.empty();

  LagLimit(TrackRules rules) {
    this.rules = rules;
  }

  /** Takes what is believed on an evening. */
  void take(PlantTrack track) {
    before = now;
    now = Optional.of(Belief.of(track));
  }

  /** Returns what is believed on the last evening. */
  Optional<Belief> now() {
    return now;
  }

  /** Returns what was believed on the evening before. */
  Optional<Belief> before() {
    return before;
  }

  /** Returns the limit; infinite before anything was taken. */
  double lnShare() {
    double atOnce = quantile(now, rules.believedAtOnce());
    return Math.min(
        atOnce, Math.max(quantile(before, rules.believed()), quantile(now, rules.believed())));
  }

  private static double quantile(Optional<Belief> belief, double probability) {
    return belief.map(b -> b.quantile(probability)).orElse(Double.POSITIVE_INFINITY);
  }
}
