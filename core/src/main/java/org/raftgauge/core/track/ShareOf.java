// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.OptionalDouble;

/** Puts a belief into the numbers of a report. */
final class ShareOf {
  private static final double HARDLY = 0.01;

  private ShareOf() {}

  static Judged.Share plant(Follow plant, Expected expected, TrackRules rules) {
    PlantTrack track = plant.track();
    double sd = track.shareSd();
    return new Judged.Share(
        plant.series().last().areaCm2(),
        Math.exp(expected.lnArea()),
        Math.exp(track.share()),
        Math.exp(track.share() - Normal.Z975 * sd),
        Math.exp(track.share() + Normal.Z975 * sd),
        daysBehind(track.share(), expected.rate()),
        plant.lagProbability(),
        track.share() / rules.healthySd(),
        expected.basis(),
        Math.exp(plant.laggingFrom()));
  }

  static Judged.Share group(GroupTrack group, PatchLevel level, Expected expected) {
    PlantTrack track = group.track();
    double sd = track.shareSd();
    return new Judged.Share(
        Math.exp(level.lnArea()),
        Math.exp(expected.lnArea()),
        Math.exp(track.share()),
        Math.exp(track.share() - Normal.Z975 * sd),
        Math.exp(track.share() + Normal.Z975 * sd),
        daysBehind(track.share(), expected.rate()),
        group.lagProbability(),
        track.share() / Math.max(sd, 1e-9),
        expected.basis(),
        Math.exp(group.laggingFrom()));
  }

  private static OptionalDouble daysBehind(double lnShare, double rate) {
    return rate > HARDLY ? OptionalDouble.of(-lnShare / rate) : OptionalDouble.empty();
  }
}
