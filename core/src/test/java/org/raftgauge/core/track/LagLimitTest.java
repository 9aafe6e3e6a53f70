// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The limit by which a plant would be called lagging, against the rule for the verdict itself. */
class LagLimitTest {
  private final TrackRules rules = TrackRules.defaults();
  private final PlantTrack track = new PlantTrack(rules);
  private final LagLimit limit = new LagLimit(rules);

  private void sight(int day, double lnShare) {
    track.take(day, lnShare, new PlantTrack.ErrorOf(0.05, 0.03), 0.12);
    limit.take(track);
  }

  private double probability(double lnLimit) {
    return Normal.below((lnLimit - track.share()) / track.shareSd());
  }

  @Test
  void nothingSeenIsUnderNoLimit() {
    assertEquals(Double.POSITIVE_INFINITY, limit.lnShare());
  }

  @Test
  void firstEveningAloneAsksForMoreThanCredible() {
    sight(0, -0.3);
    assertEquals(rules.believedAtOnce(), probability(limit.lnShare()), 1e-6);
  }

  @Test
  void limitIsTheLowestByWhichTheVerdictWouldBeLagging() {
    double[] seen = {-0.30, -0.36, -0.28, -0.5, -0.2, -0.24};
    double[] before = new double[400];
    for (int day = 0; day < seen.length; day++) {
      sight(day, seen[day]);
      for (int i = 0; i < before.length; i++) {
        // Second way: both probabilities of the verdict's rule, at limits from -1 up to 1.
        double at = -1 + i / 200.0;
        double now = probability(at);
        boolean lags =
            now >= rules.believedAtOnce()
                || (now >= rules.believed() && before[i] >= rules.believed());
        assertEquals(lags, at >= limit.lnShare(), "day " + day + ", limit " + at);
        before[i] = now;
      }
    }
    assertTrue(limit.lnShare() < 0);
  }
}
