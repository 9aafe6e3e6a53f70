// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationSign;

class FalseAlarmsTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

  /** Evenings whose picture shifts by a scatter, and from an evening on by more. */
  private static List<StationEvening> evenings(int n, int from, double shiftPx) {
    Random random = new Random(9);
    List<StationEvening> evenings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double right = 0.3 * random.nextGaussian() + (i >= from ? shiftPx : 0);
      evenings.add(
          new StationEvening(FIRST.plusDays(i), Map.of(StationSign.SHIFT_RIGHT, right), List.of()));
    }
    return evenings;
  }

  @Test
  void evenEveningsGiveNoAlarmAndCountByYears() {
    FalseAlarms.Count count =
        FalseAlarms.rendered(List.of(evenings(30, 30, 0), evenings(43, 43, 0)));
    assertEquals(0, count.alarms());
    assertEquals(73 / 365.0, count.years(), 1e-12);
  }

  @Test
  void aStepIsOneAlarmHoweverLongItIsSaid() {
    FalseAlarms.Count count = FalseAlarms.rendered(List.of(evenings(30, 20, 40)));
    assertEquals(1, count.alarms());
    assertEquals(Map.of(StationSign.SHIFT_RIGHT.words(), 1), count.bySign());
  }

  @Test
  void drawnYearsAreTheSameForTheSameSeedAndAsLongAsAsked() {
    List<List<StationEvening>> usual = List.of(evenings(30, 30, 0));
    FalseAlarms.Count one = FalseAlarms.drawn(usual, 3, 5);
    assertEquals(one, FalseAlarms.drawn(usual, 3, 5));
    assertEquals(3, one.years(), 1e-9);
    // Scatter of 0.3 px without a step: an alarm limit of 4 sigma is met once in decades.
    assertTrue(one.alarms() <= 3, "alarms " + one.alarms());
  }
}
