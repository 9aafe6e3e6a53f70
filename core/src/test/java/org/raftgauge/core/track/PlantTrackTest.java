// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.track.PlantTrack.ErrorOf;

class PlantTrackTest {
  private static final TrackRules RULES = TrackRules.defaults();

  @Test
  void firstSightIsWeighedAgainstHealthyPlants() {
    PlantTrack track = new PlantTrack(RULES);
    double fresh = 0.05;
    track.take(1, -0.3, new ErrorOf(fresh, 0), 0.1);
    // Normal prior and one observation: mean = y s^2 / (s^2 + e^2), s the healthy spread.
    double s2 = RULES.healthySd() * RULES.healthySd();
    assertEquals(-0.3 * s2 / (s2 + fresh * fresh), track.share(), 1e-12);
    assertEquals(Math.sqrt(s2 * fresh * fresh / (s2 + fresh * fresh)), track.shareSd(), 1e-12);
  }

  @Test
  void intervalCoversTheTrueShareOfPlantsThatWander() {
    Random random = new Random(9);
    int inside = 0;
    int n = 4000;
    for (int plant = 0; plant < n; plant++) {
      double share = RULES.healthySd() * random.nextGaussian();
      double stays = 0.02 * random.nextGaussian();
      PlantTrack track = new PlantTrack(RULES);
      for (int day = 0; day < 12; day++) {
        share += day == 0 ? 0 : RULES.shareDrift() * random.nextGaussian();
        track.take(day, share + stays + 0.03 * random.nextGaussian(), new ErrorOf(0.03, 0.02), 0.1);
      }
      inside += Math.abs(track.share() - share) < 1.96 * track.shareSd() ? 1 : 0;
    }
    // Nominal 95 %; the rate that these plants do not have makes the interval a little wide.
    assertEquals(0.965, inside / (double) n, 0.02);
  }

  @Test
  void lowerBoundUnderTheBeliefTellsNothingAndOneAboveLifts() {
    PlantTrack track = new PlantTrack(RULES);
    for (int day = 0; day < 6; day++) {
      track.take(day, 0, new ErrorOf(0.03, 0), 0.1);
    }
    track.takeAtLeast(6, -0.5, new ErrorOf(0.1, 0), 0.1);
    assertEquals(0, track.share(), 1e-9);
    track.takeAtLeast(7, 0.15, new ErrorOf(0.03, 0), 0.1);
    assertTrue(track.share() > 0.02, "" + track.share());
  }

  @Test
  void stallEvidenceGrowsForAPlantThatStopsAndNotForOneThatGoesOn() {
    PlantTrack goes = new PlantTrack(RULES);
    PlantTrack stops = new PlantTrack(RULES);
    for (int day = 0; day < 12; day++) {
      goes.take(day, 0, new ErrorOf(0.03, 0), 0.1);
      stops.take(day, -0.1 * Math.max(0, day - 7), new ErrorOf(0.03, 0), 0.1);
    }
    assertTrue(stops.stallEvidence() > RULES.stallEvidence(), "" + stops.stallEvidence());
    assertEquals(0, goes.stallEvidence(), 1e-9);
  }

  @Test
  void everySizeOfStepIsTheSameWhateverTheDaysBetween() {
    // A gap of three days is one of three times the drift: the belief is wider after it.
    PlantTrack daily = new PlantTrack(RULES);
    PlantTrack gap = new PlantTrack(RULES);
    daily.take(0, 0, new ErrorOf(0.03, 0), 0.1);
    gap.take(0, 0, new ErrorOf(0.03, 0), 0.1);
    daily.take(1, 0, new ErrorOf(0.03, 0), 0.1);
    gap.take(3, 0, new ErrorOf(0.03, 0), 0.1);
    assertTrue(gap.shareSd() > daily.shareSd());
  }

  @Test
  void dropThatTheWholeRaftSharesTellsNoStall() {
    // Grows as expected for nine days; the tenth photo shows all plants of its raft 25 % smaller.
    double alone = stallAfterDrop(0);
    double together = stallAfterDrop(Math.log(0.75));
    assertTrue(alone > TrackRules.defaults().stallEvidence() / 2, alone + " alone");
    assertTrue(together < alone / 4, together + " together");
  }

  private static double stallAfterDrop(double common) {
    PlantTrack track = new PlantTrack(TrackRules.defaults());
    for (int day = 1; day <= 9; day++) {
      track.take(day, 0, new ErrorOf(0.03, 0), 0.1);
    }
    track.take(10, Math.log(0.75), new ErrorOf(0.03, 0, common), 0.1);
    return track.stallEvidence();
  }
}
