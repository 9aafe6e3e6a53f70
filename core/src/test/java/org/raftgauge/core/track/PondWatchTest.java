// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Three ponds of four rafts each, seen every evening. */
class PondWatchTest {
  private final Cohort cohort = Levels.cohort();
  private final PondWatch watch = new PondWatch(TrackRules.defaults());
  private final List<Patch> patches = new ArrayList<>();
  private final Random random = new Random(23);

  /** Tells by how much a raft departs on a day, ln(area). */
  private interface Departs {
    double of(int raft, int day);
  }

  private void evenings(int last, Departs departs) {
    for (int raft = 0; raft < 12; raft++) {
      patches.add(Levels.patch("R" + raft, "P" + raft % 3, cohort));
    }
    for (int day = 0; day <= last; day++) {
      List<Cohort.Level> tonight = new ArrayList<>();
      for (int raft = 0; raft < 12; raft++) {
        double ln = 2 + 0.12 * day + 0.02 * random.nextGaussian() + departs.of(raft, day);
        tonight.add(Levels.tonight(patches.get(raft), day, ln, "bench"));
      }
      cohort.learnRate(tonight);
      tonight.forEach(l -> l.patch().add(l.level()));
      watch.take(tonight);
    }
  }

  private double share(String pond) {
    return Math.exp(watch.pond(pond).orElseThrow().track().share());
  }

  @Test
  void soundPondsStandAtOne() {
    evenings(10, (raft, day) -> 0);
    for (String pond : List.of("P0", "P1", "P2")) {
      assertEquals(1, share(pond), 0.04, pond);
      assertFalse(watch.pond(pond).orElseThrow().lagging(), pond);
    }
    patches.forEach(patch -> assertFalse(watch.lags(patch), patch.raft()));
  }

  @Test
  void pondThatLosesAFifthIsFoundWithItsShare() {
    evenings(12, (raft, day) -> raft % 3 == 1 ? -0.04 * Math.max(0, day - 6) : 0);
    // -0.04 a day over six days: exp(-0.24) = 0.787.
    assertEquals(0.787, share("P1"), 0.05);
    assertTrue(watch.pond("P1").orElseThrow().lagging());
    assertFalse(watch.pond("P0").orElseThrow().lagging());
    assertTrue(watch.lags(patches.get(4)), "a raft of P1");
    assertFalse(watch.lags(patches.get(3)), "a raft of P0");
  }

  @Test
  void raftThatLosesAFifthIsFoundAndNotItsPond() {
    evenings(12, (raft, day) -> raft == 1 ? -0.04 * Math.max(0, day - 6) : 0);
    assertTrue(watch.raft(patches.get(1)).orElseThrow().lagging());
    assertFalse(watch.raft(patches.get(4)).orElseThrow().lagging());
    assertFalse(watch.pond("P1").orElseThrow().lagging());
  }

  @Test
  void pondALittleSmallerThanTheOthersIsLeftAlone() {
    evenings(15, (raft, day) -> raft % 3 == 1 ? -0.04 : 0);
    assertFalse(watch.pond("P1").orElseThrow().lagging());
  }

  @Test
  void cohortOfOnePondCannotTellItsPond() {
    Patch one = Levels.patch("X", "PX", Levels.cohort());
    one.add(Levels.level(3, 2, "bench"));
    watch.take(List.of(new Cohort.Level(one, one.last().orElseThrow())));
    assertTrue(watch.pond("PX").isEmpty());
    assertTrue(watch.raft(one).isEmpty());
  }
}
