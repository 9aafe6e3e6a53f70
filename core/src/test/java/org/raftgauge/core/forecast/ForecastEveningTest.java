// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.history.SiteLook;

/**
 * Forecasts of plants that grow exactly on a known curve, by a grader without error: what comes out
 * is worked out by hand from {@link GrowingRafts#LOGISTIC} and {@code w = 0.5 A}.
 */
class ForecastEveningTest {
  /** Of the forecast's smooth curve, with no error in photos. */
  private static final double CLOSE = 0.02;

  @TempDir private Path folder;

  private static double weightG(double dat) {
    return 0.5 * GrowingRafts.LOGISTIC.applyAsDouble(dat);
  }

  private EveningForecast usual() {
    return new GrowingRafts(folder).withPast().raft("R-1", 20).forecast(GrowingRafts.exact());
  }

  @Test
  void weightIsThatOfTheCurveTimesTheHeadsThatStand() {
    RaftForecast raft = usual().rafts().get(0);

    assertEquals(10 * weightG(20.75), raft.weightG(0).orElseThrow().mean(), 10 * CLOSE * 105);
    // Ten plants; no loss in the history, so 0.05 % a day at most: 0.25 % in five days.
    assertTrue(raft.heads(5) > 9.97 && raft.heads(5) < 10, "heads " + raft.heads(5));
    double there = raft.heads(5) * weightG(25.75);
    assertEquals(there, raft.weightG(5).orElseThrow().mean(), CLOSE * there);
    assertTrue(raft.weightG(5).orElseThrow().holds80(there));
  }

  @Test
  void brownPlantIsNoHeadAndHasNoWeight() {
    RaftForecast raft =
        new GrowingRafts(folder)
            .withPast()
            .raft("R-1", 20)
            .brown("R-1")
            .forecast(GrowingRafts.exact())
            .rafts()
            .get(0);

    // Nine of the ten plants.
    assertEquals(9, raft.heads(0), 1e-9);
    assertEquals(9 * weightG(20.75), raft.weightG(0).orElseThrow().mean(), 9 * CLOSE * 105);
  }

  @Test
  void areaIsForecastTooAndItsIntervalWidens() {
    RaftForecast raft = usual().rafts().get(0);

    double there = raft.heads(10) * GrowingRafts.LOGISTIC.applyAsDouble(30.75);
    assertEquals(there, raft.areaCm2(10).mean(), CLOSE * there);
    Amount near = raft.areaCm2(1);
    Amount far = raft.areaCm2(10);
    assertTrue((far.hi80() - far.lo80()) / far.mean() > (near.hi80() - near.lo80()) / near.mean());
  }

  @Test
  void readyDayIsWhenNineOfTenAreHeavyEnough() {
    // 0.5 A(t) = 127 where 400 / (1 + e) = 254, e = 0.575, t = 20 - ln(0.575) / 0.25 = 22.21;
    // evenings are at .75, so 22.75 is the first: two days on.
    EveningForecast forecast =
        new GrowingRafts(folder)
            .withPast()
            .raft("R-1", 20)
            .harvest("head_weight_g: 150, minimum_g: 127, ready_share: 0.9, window_dat: [20, 45]")
            .forecast(GrowingRafts.exact());
    RaftForecast raft = forecast.rafts().get(0);

    assertEquals(2, raft.readyDay(0.5).orElseThrow());
    assertTrue(raft.readyDay(0.1).orElseThrow() <= 2);
    assertTrue(raft.readyDay(0.9).orElseThrow() >= 2);
  }

  @Test
  void salesAreTrimmedAndPacked() {
    EveningForecast forecast =
        new GrowingRafts(folder)
            .withPast()
            .raft("R-1", 20)
            .harvest(
                "head_weight_g: 150, minimum_g: 100, ready_share: 0.9, window_dat: [20, 45],"
                    + " trim_share: 0.1, pack_g: 200")
            .forecast(GrowingRafts.exact());
    ForecastRow row = forecast.rows().get(3);

    double weight = row.weightG().orElseThrow().mean();
    assertEquals(0.9 * weight, row.sales().orElseThrow().weightG(), 1e-9 * weight);
    assertEquals(
        Math.floor(0.9 * weight / 200), row.sales().orElseThrow().packs().getAsDouble(), 0);
    SupplyRow supply = forecast.supply().get(14);
    assertEquals(0.9 * supply.readyG().mean(), supply.salesG(), 1e-6 * supply.salesG());
  }

  @Test
  void earlierCutsAreSummed() {
    EveningForecast forecast =
        new GrowingRafts(folder)
            .withPast()
            .raft("R-1", 20)
            .file(
                "harvests.csv",
                """
                raft,harvested_at,heads,total_weight_g
                R-1,2027-05-20T08:00,10,300
                R-1,2027-05-25T08:00,10,250
                R-1,2027-06-09T08:00,10,9999
                """)
            .forecast(GrowingRafts.exact());

    // 300 + 250; the harvest of 9 June is later than the evening and not known.
    assertEquals(550, forecast.rows().get(0).sales().orElseThrow().cutBeforeG(), 1e-9);
  }

  @Test
  void withoutAGraderAreasAreTellingAndThatIsSaid() {
    EveningForecast forecast =
        new GrowingRafts(folder).withPast().raft("R-1", 20).forecast(Map.of());
    RaftForecast raft = forecast.rafts().get(0);

    assertTrue(raft.weightG(5).isEmpty());
    assertTrue(raft.readyDay(0.5).isEmpty());
    assertTrue(raft.areaCm2(5).mean() > 3000);
    assertEquals(List.of("no grader of batavia: area only"), raft.generalWarnings(5));
    assertTrue(
        forecast
            .remarks()
            .contains(
                "batavia has no grader: its areas are forecast, no weights and no ready days;"
                    + " weigh plants (grader picks) and fit one (grader fit)"),
        forecast.remarks().toString());
    assertTrue(forecast.supply().isEmpty());
  }

  @Test
  void traysThatAreNotTransplantedYetAreNamed() {
    GrowingRafts rafts = new GrowingRafts(folder).withPast().raft("R-1", 20);
    List<String> remarks = rafts.tray("T-2", 12).tray("T-1", 14).forecast(Map.of()).remarks();

    assertTrue(
        remarks.contains("T-1, T-2 are not transplanted yet: no forecast"), remarks.toString());
  }

  @Test
  void weightsBeyondTheWeighingsAreWarnedOf() {
    RaftForecast raft = usual().rafts().get(0);

    assertFalse(raft.generalWarnings(0).contains("heads beyond the grader's weighings"));
    // 400 / (1 + exp(-0.25 * 14.75)) = 390 cm2, a tenth and more over the 300 weighed.
    assertTrue(raft.generalWarnings(14).contains("heads beyond the grader's weighings"));
  }

  @Test
  void withoutPastCyclesTheForecastIsRoughAndWider() {
    RaftForecast borne = usual().rafts().get(0);
    RaftForecast alone =
        new GrowingRafts(folder.resolve("alone"))
            .raft("R-1", 20)
            .forecast(GrowingRafts.exact())
            .rafts()
            .get(0);

    String warning = "the crop has fewer past cycles than its growth curve needs: a rough forecast";
    assertFalse(borne.generalWarnings(5).contains(warning));
    assertTrue(alone.generalWarnings(5).contains(warning));
    assertTrue(width(alone.weightG(5).orElseThrow()) > width(borne.weightG(5).orElseThrow()));
  }

  private static double width(Amount amount) {
    return (amount.hi80() - amount.lo80()) / amount.mean();
  }

  @Test
  void nothingLaterThanTheEveningHasAnInfluence() {
    GrowingRafts rafts = new GrowingRafts(folder).withPast().raft("R-1", 20);
    List<ForecastRow> before = rafts.forecast(GrowingRafts.exact()).rows();

    // Photos of the next eight days of a plant four days ahead, and a planting of tomorrow.
    rafts.photograph("R-1", GrowingRafts.TONIGHT.minusDays(24), 32);
    rafts.looks().removeIf(l -> l.raft().equals("R-1") && !isLater(l.takenAt().toLocalDate()));
    List<SiteLook> later = rafts.looks().stream().filter(l -> l.raft().equals("R-1")).toList();
    GrowingRafts again = new GrowingRafts(folder.resolve("again")).withPast().raft("R-1", 20);
    again.looks().addAll(later);
    again.plant("R-2", GrowingRafts.TONIGHT.plusDays(1), Optional.empty());

    assertEquals(40, later.size());
    assertEquals(before, again.forecast(GrowingRafts.exact()).rows());
  }

  private static boolean isLater(LocalDate day) {
    return day.isAfter(GrowingRafts.TONIGHT);
  }

  @Test
  void aRaftThatIsReadySoonIsATaskWithItsInterval() {
    GrowingRafts rafts = new GrowingRafts(folder).withPast().raft("R-1", 20).raft("R-2", 8);
    List<Task> tasks = HarvestTasks.of(rafts.forecast(GrowingRafts.exact()), rafts.book());

    // R-1 passes 100 g, 200 cm2, at day 20: it is ready; R-2 has twelve days to go.
    assertEquals(1, tasks.size());
    Task task = tasks.get(0);
    assertEquals("R-1", task.where().raft());
    assertEquals("harvest/R-1/" + GrowingRafts.TONIGHT.minusDays(20), task.item());
    assertTrue(task.why().startsWith("By the forecast ready now (80 %: 2027-06-01 to"), task.why());
    assertEquals(Optional.of(LocalDate.of(2027, 6, 2)), task.by());
  }
}
