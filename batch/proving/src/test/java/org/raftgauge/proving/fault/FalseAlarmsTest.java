// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.EdgeBlur;
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

  /** Evenings whose every part is blurred by so much, every tenth part twice that. */
  private static List<StationEvening> blurred(double px, int shift) {
    Random random = new Random(4);
    List<StationEvening> evenings = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      List<OptionalDouble> parts = new ArrayList<>();
      for (int part = 0; part < EdgeBlur.CELLS * EdgeBlur.CELLS; part++) {
        double usual = (part + shift) % 10 < 2 ? 2 * px : px;
        parts.add(OptionalDouble.of(usual * (1 + 0.02 * random.nextGaussian())));
      }
      evenings.add(new StationEvening(FIRST.plusDays(i), Map.of(), parts));
    }
    return evenings;
  }

  @Test
  void stationsWhoseLensesAreSoftInOtherPlacesGiveNoAlarmWhenWeeksOfBothAreJoined() {
    List<List<StationEvening>> usual = List.of(blurred(0.8, 0), blurred(0.6, 5));
    assertEquals(Map.of(), FalseAlarms.drawn(usual, 2, 3).bySign());
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
