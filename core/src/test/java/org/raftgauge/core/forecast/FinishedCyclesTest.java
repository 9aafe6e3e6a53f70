// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortRule;

class FinishedCyclesTest {
  private static final LocalDate START = LocalDate.of(2027, 3, 1);

  @TempDir private Path folder;

  /** Returns how many cycles an evening can draw on. */
  private static int cycles(GrowingRafts rafts, LocalDate evening) {
    return ways(rafts, evening, new FinishedCycles.Memory()).size();
  }

  private static List<CommonPath> ways(
      GrowingRafts rafts, LocalDate evening, FinishedCycles.Memory memory) {
    CropBook known = BookAsOf.of(rafts.book(), evening);
    Planting planting = known.plantings().get(0);
    return FinishedCycles.of(known, rafts.looks(), CohortRule.defaults(), memory)
        .ways(planting, Optional.empty());
  }

  private GrowingRafts two(LocalDate firstEnds, Optional<LocalDate> secondEnds) {
    return new GrowingRafts(folder)
        .plant("A", START, Optional.of(firstEnds))
        .photograph("A", START, 30)
        .plant("B", START.plusDays(1), secondEnds)
        .photograph("B", START.plusDays(1), 29);
  }

  @Test
  void aCycleCountsOnceAllItsPlantingsHaveEnded() {
    GrowingRafts rafts = two(START.plusDays(31), Optional.of(START.plusDays(40)));

    assertEquals(0, cycles(rafts, START.plusDays(35)));
    assertEquals(1, cycles(rafts, START.plusDays(41)));
  }

  @Test
  void aCycleOfWhichARaftStillStandsDoesNotCount() {
    assertEquals(0, cycles(two(START.plusDays(31), Optional.empty()), START.plusDays(60)));
  }

  @Test
  void plantsThatDiedOrWereWeighedBeforeTheOthersAreNoCycle() {
    String events = "at,kind,raft,site,to_raft,to_site,by,note\n";
    StringBuilder text = new StringBuilder(events);
    for (String site : List.of("A1", "A2", "B1", "B2", "C1")) {
      text.append(START.plusDays(25)).append("T20:00,weighed,A,").append(site).append(",,,,\n");
    }
    GrowingRafts rafts =
        new GrowingRafts(folder)
            .plant("A", START, Optional.empty())
            .photograph("A", START, 30)
            .file("events.csv", text.toString());

    assertEquals(0, cycles(rafts, START.plusDays(30)));
  }

  @Test
  void whatEndsLaterThanTheEveningHasNotEnded() {
    GrowingRafts rafts =
        new GrowingRafts(folder)
            .plant("A", START, Optional.of(START.plusDays(33)))
            .photograph("A", START, 32);

    assertEquals(0, cycles(rafts, START.plusDays(32)));
    assertEquals(1, cycles(rafts, START.plusDays(34)));
  }

  @Test
  void replaysThatShareAMemoryDrawOnTheSameWays() {
    GrowingRafts rafts =
        two(START.plusDays(31), Optional.of(START.plusDays(40)))
            .plant("C", START.plusDays(10), Optional.of(START.plusDays(45)))
            .photograph("C", START.plusDays(10), 34);
    FinishedCycles.Memory shared = new FinishedCycles.Memory();
    for (int day : new int[] {32, 42, 46}) {
      List<CommonPath> ways = ways(rafts, START.plusDays(day), shared);
      List<CommonPath> fresh = ways(rafts, START.plusDays(day), new FinishedCycles.Memory());
      // None is over by day 32, the first two rafts by day 42, the third by day 46.
      assertEquals(day == 32 ? 0 : day == 42 ? 1 : 2, ways.size());
      for (int w = 0; w < fresh.size(); w++) {
        assertEquals(fresh.get(w).size(), ways.get(w).size());
        assertEquals(fresh.get(w).lnArea(5), ways.get(w).lnArea(5), 0);
      }
    }
  }

  @Test
  void theFirstDayNeededIsThatOfTheFifthLatestCycle() {
    GrowingRafts rafts = new GrowingRafts(folder);
    for (int cycle = 0; cycle < 7; cycle++) {
      LocalDate start = START.plusDays(40L * cycle);
      rafts.plant("A", start, Optional.of(start.plusDays(35)));
    }
    LocalDate now = START.plusDays(290);
    rafts.plant("A", now.minusDays(6), Optional.empty());
    CropBook known = BookAsOf.of(rafts.book(), now);

    // Cycles 2 to 6 are the five latest of the seven that are over.
    assertEquals(START.plusDays(80), CycleStarts.firstDay(known, now));
    assertTrue(ForecastEvening.firstDay(known, now).isBefore(now.minusDays(6)));
  }
}
