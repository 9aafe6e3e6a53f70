// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/** A raft or a pond followed as a whole, with what was credible on the evening before. */
final class GroupTrack {
  /** Midway between the healthy level and a loss of 15 %. */
  private static final double LIMIT = Math.log(0.92);

  private final PlantTrack track;
  private final TrackRules rules;
  private double lagBefore;
  private double lag;
  private double rate;

  /**
   * @param rules how departures are judged
   * @param healthySd spread of ln(share) among healthy groups
   */
  GroupTrack(TrackRules rules, double healthySd) {
    this.rules = rules;
    this.track =
        new PlantTrack(
            new TrackRules(
                rules.believed(),
                rules.believedAtOnce(),
                0,
                rules.photoSd(),
                healthySd,
                rules.shareDrift(),
                rules.rateDrift(),
                rules.rateMemoryDays(),
                rules.stallEvidence()));
  }

  /**
   * Takes an evening.
   *
   * @param day the evening as a day number
   * @param y ln(share of expected) of the group
   * @param error of it
   * @param rate growth rate of the reference, 1/day
   */
  void take(double day, double y, PlantTrack.ErrorOf error, double rate) {
    this.rate = rate;
    track.take(day, y, error, rate);
    lagBefore = lag;
    lag = Normal.below((LIMIT - track.share()) / track.shareSd());
  }

  PlantTrack track() {
    return track;
  }

  double rate() {
    return rate;
  }

  double lagProbability() {
    return lag;
  }

  boolean lagging() {
    return lag >= rules.believedAtOnce()
        || (lag >= rules.believed() && lagBefore >= rules.believed());
  }
}
