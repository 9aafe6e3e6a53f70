// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/**
 * The lowest limit of ln(share) by which what is believed on two evenings would be called lagging:
 * credible on both, or more than credible on the last.
 */
final class LagLimit {
  private final TrackRules rules;
  private double before = Double.POSITIVE_INFINITY;
  private double now = Double.POSITIVE_INFINITY;
  private double atOnce = Double.POSITIVE_INFINITY;

  LagLimit(TrackRules rules) {
    this.rules = rules;
  }

  /** Takes what is believed on an evening. */
  void take(PlantTrack track) {
    before = now;
    now = track.share() + Normal.quantile(rules.believed()) * track.shareSd();
    atOnce = track.share() + Normal.quantile(rules.believedAtOnce()) * track.shareSd();
  }

  /** Returns the limit; infinite before anything was taken. */
  double lnShare() {
    return Math.min(atOnce, Math.max(before, now));
  }
}
