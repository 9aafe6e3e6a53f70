// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/** A raft or a pond followed as a whole, with what was credible on the evening before. */
final class GroupTrack {
  private final PlantTrack track;
  private final TrackRules rules;
  private final double limit;
  private final LagLimit lagLimit;
  private double lagBefore;
  private double lag;
  private double rate;

  /**
   * A kind of group.
   *
   * @param healthySd spread of ln(share) among healthy groups
   * @param limit share of the expected under which a group lags
   */
  record Kind(double healthySd, double limit) {}

  /**
   * @param rules how departures are judged
   * @param kind what healthy groups of its kind are like
   */
  GroupTrack(TrackRules rules, Kind kind) {
    this.rules = rules;
    this.lagLimit = new LagLimit(rules);
    this.limit = Math.log(kind.limit());
    this.track = new PlantTrack(rules.ofGroups(kind.healthySd()));
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
    lagLimit.take(track);
    lagBefore = lag;
    lag = Normal.below((limit - track.share()) / track.shareSd());
  }

  PlantTrack track() {
    return track;
  }

  double rate() {
    return rate;
  }

  /** Returns the believed share of the expected. */
  double share() {
    return Math.exp(track.share());
  }

  /** Returns the lower end of its 95 % interval. */
  double lo95() {
    return Math.exp(track.share() - Normal.Z975 * track.shareSd());
  }

  /** Returns the upper end. */
  double hi95() {
    return Math.exp(track.share() + Normal.Z975 * track.shareSd());
  }

  double lagProbability() {
    return lag;
  }

  double laggingFrom() {
    return lagLimit.lnShare();
  }

  boolean lagging() {
    return lag >= rules.believedAtOnce()
        || (lag >= rules.believed() && lagBefore >= rules.believed());
  }
}
