// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Station a, which fails or whose plants do, and b, which is sound; eight rafts each. */
class StationWatchTest {
  private static final double RATE = 0.15;

  private final StationWatch watch = new StationWatch();
  private final List<Patch> a = new ArrayList<>();
  private final List<Patch> b = new ArrayList<>();

  private void rafts(int ponds) {
    Cohort cohort = Levels.settled();
    for (int raft = 0; raft < 8; raft++) {
      a.add(Levels.patch("A" + raft, "pa" + raft % ponds, cohort));
      b.add(Levels.patch("B" + raft, "pb" + raft % 2, cohort));
    }
  }

  /** Shows the watch an evening as the farm's pass does: known offsets off, held levels doubted. */
  private void evening(int day, IntToDoubleFunction departs) {
    List<Cohort.Level> tonight = new ArrayList<>();
    for (int raft = 0; raft < 8; raft++) {
      // Noise that is none: a raft is always a little over or under.
      double ln = 2 + 0.3 * raft + RATE * day + (raft % 2 == 0 ? 0.004 : -0.004);
      double seen = ln + departs.applyAsDouble(day) - watch.offset("a");
      tonight.add(Levels.tonight(a.get(raft), day, seen, "a"));
      tonight.add(Levels.tonight(b.get(raft), day, ln, "b"));
    }
    watch.evening(tonight);
    for (Cohort.Level level : tonight) {
      StationStep step = watch.steps().get(level.level().station());
      PatchLevel now =
          watch.unsettled(level.level().station())
              ? level.level().doubted()
              : level.level().shifted(step == null ? 0 : -step.ln());
      level.patch().add(now);
    }
  }

  private void evenings(int from, int to, IntToDoubleFunction departs) {
    for (int day = from; day <= to; day++) {
      evening(day, departs);
    }
  }

  @Test
  void stepInSeveralPondsIsTakenOffFromTheFirstEvening() {
    rafts(2);
    evenings(0, 4, day -> 0);
    evening(5, day -> -0.16);
    assertFalse(watch.unsettled("a"));
    assertEquals(-0.16, watch.offset("a"), 0.01);
    evening(6, day -> -0.16);
    assertTrue(watch.steps().isEmpty(), "what stays is no new step");
    assertEquals(-0.16, watch.offset("a"), 0.01);
    assertEquals(0, watch.offset("b"), 1e-12);
  }

  @Test
  void mendedCameraLosesItsOffset() {
    rafts(2);
    evenings(0, 4, day -> 0);
    evenings(5, 8, day -> -0.16);
    evenings(9, 10, day -> 0);
    assertEquals(0, watch.offset("a"), 0.01);
  }

  @Test
  void stepUnderAStationOfOnePondIsHeldThenTakenForTheCamera() {
    rafts(1);
    evenings(0, 4, day -> 0);
    evening(5, day -> -0.16);
    assertTrue(watch.unsettled("a"));
    assertEquals(0, watch.offset("a"), 1e-12);
    evening(6, day -> -0.16);
    assertFalse(watch.unsettled("a"));
    assertFalse(watch.ramp("a"));
    assertEquals(-0.16, watch.offset("a"), 0.01);
  }

  @Test
  void rampUnderAStationOfOnePondIsLeftToThePond() {
    rafts(1);
    evenings(0, 4, day -> 0);
    evening(5, day -> -0.1 * (day - 4));
    assertTrue(watch.unsettled("a"));
    evening(6, day -> -0.1 * (day - 4));
    assertTrue(watch.ramp("a"));
    assertEquals(0, watch.offset("a"), 1e-12);
    assertFalse(watch.unsettled("a"));
  }

  @Test
  void oneBadEveningOfAStationOfOnePondIsForgotten() {
    rafts(1);
    evenings(0, 4, day -> 0);
    evening(5, day -> -0.16);
    evening(6, day -> 0);
    assertFalse(watch.unsettled("a"));
    assertEquals(0, watch.offset("a"), 1e-12);
    assertTrue(watch.steps().isEmpty());
  }

  @Test
  void secondStepTheSameWayOnTheNextEveningIsGrowthThatFails() {
    rafts(2);
    evenings(0, 4, day -> 0);
    evening(5, day -> -0.16);
    assertEquals(-0.16, watch.offset("a"), 0.01);
    evening(6, day -> -0.32);
    assertTrue(watch.ramp("a"), "a camera steps once");
    assertTrue(watch.steps().isEmpty());
    assertEquals(-0.16, watch.offset("a"), 0.01);
  }

  @Test
  void secondStepTheSameWayAfterAQuietEveningIsTheCamerasAgain() {
    rafts(2);
    evenings(0, 4, day -> 0);
    evenings(5, 6, day -> -0.16);
    evening(7, day -> -0.32);
    assertFalse(watch.ramp("a"));
    assertEquals(-0.32, watch.offset("a"), 0.02);
  }
}
