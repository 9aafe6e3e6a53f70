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

class HarvestPlanTest {
  private static final LocalDate TONIGHT = GrowingRafts.TONIGHT;

  @TempDir private Path folder;

  private EveningForecast forecast() {
    return new GrowingRafts(folder)
        .withPast()
        .raft("R-1", 22)
        .raft("R-2", 20)
        .harvest(
            "head_weight_g: 150, minimum_g: 100, ready_share: 0.9, window_dat: [20, 45],"
                + " trim_share: 0.1, pack_g: 300")
        .forecast(GrowingRafts.exact());
  }

  @Test
  void whatFillsNoPackIsCarriedToTheNextDay() {
    EveningForecast forecast = forecast();
    List<PlanRow> plan =
        List.of(
            new PlanRow("R-1", Optional.of(TONIGHT.plusDays(1))),
            new PlanRow("R-2", Optional.of(TONIGHT.plusDays(2))));
    List<PlanDay> days = HarvestPlan.totals(forecast, plan);

    double first = 0.9 * forecast.rafts().get(0).weightG(1).orElseThrow().mean();
    double second = 0.9 * forecast.rafts().get(1).weightG(2).orElseThrow().mean();
    PlanDay one = days.get(1);
    PlanDay two = days.get(2);
    assertEquals(List.of("R-1"), one.rafts());
    assertEquals(first, one.salesG(), 1e-9);
    assertEquals(Math.floor(first / 300), one.packs().orElseThrow(), 0);
    assertEquals(first - 300 * Math.floor(first / 300), one.leftG(), 1e-9);
    assertEquals(Math.floor((one.leftG() + second) / 300), two.packs().orElseThrow(), 0);
    assertEquals(one.leftG() + second, 300 * two.packs().orElseThrow() + two.leftG(), 1e-9);
    // Whatever the days, all that is cut is packed or left.
    double packed = days.stream().mapToDouble(d -> 300 * d.packs().orElseThrow()).sum();
    assertEquals(first + second, packed + days.get(days.size() - 1).leftG(), 1e-6);
  }

  @Test
  void aReadyRaftWaitsOnTheWaterUntilItsDay() {
    EveningForecast forecast = forecast();
    List<PlanRow> plan = List.of(new PlanRow("R-1", Optional.of(TONIGHT.plusDays(3))));
    List<PlanDay> days = HarvestPlan.totals(forecast, plan);

    assertTrue(days.get(2).waitingRafts().contains("R-1"));
    assertEquals(List.of("R-1"), days.get(3).rafts());
    assertTrue(days.get(4).waitingRafts().stream().noneMatch("R-1"::equals));
  }

  @Test
  void theProposalTakesEachRaftOnItsReadyDayAndNeverToday() {
    List<PlanRow> plan = HarvestPlan.propose(forecast());

    assertEquals(List.of("R-1", "R-2"), plan.stream().map(PlanRow::raft).toList());
    // Both have heads of over 100 g tonight: tomorrow is the first day to cut.
    plan.forEach(r -> assertEquals(Optional.of(TONIGHT.plusDays(1)), r.harvestOn()));
  }

  @Test
  void aRaftWithoutAForecastOrADayOutOfReachIsWrong() {
    EveningForecast forecast = forecast();

    assertEquals(
        Optional.of("raft \"R-9\" has no forecast"),
        HarvestPlan.wrongRaft(forecast, new PlanRow("R-9", Optional.empty())));
    assertEquals(
        Optional.of("2027-07-01 is not among the days forecast, 2027-06-01 to 2027-06-15"),
        HarvestPlan.wrongDay(forecast, new PlanRow("R-1", Optional.of(LocalDate.of(2027, 7, 1)))));
    assertEquals(
        Optional.empty(), HarvestPlan.wrongDay(forecast, new PlanRow("R-1", Optional.of(TONIGHT))));
  }
}
