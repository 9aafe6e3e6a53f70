// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LookBackTest {
  private static final Amount HUNDRED = new Amount(100, 90, 110, 80, 120);

  @TempDir private Path folder;

  private static LookBackRow row(double harvestedG, boolean hindsight) {
    LocalDate day = LocalDate.of(2027, 6, 6);
    return new LookBackRow(
        "R", "batavia", day.minusDays(5), day, 5, HUNDRED, 10, harvestedG, 10, hindsight);
  }

  @Test
  void theScoreIsMedianErrorBiasAndCoverage() {
    List<LookBackScore> scores =
        LookBackScore.of(List.of(row(100, false), row(80, false), row(125, true), row(110, false)));

    LookBackScore score = scores.get(0);
    // Errors 0, +25, -20, -9.09 %: absolute 0, 9.09, 20, 25; their median 14.55 %.
    assertEquals(0.1454545, score.medianAbsoluteShare(), 1e-6);
    assertEquals((0 + 0.25 - 0.2 + 100 / 110.0 - 1) / 4, score.meanShare(), 1e-12);
    // 100 and 110 lie in 90 to 110; 80 in 80 to 120, its end counts; 125 in neither.
    assertEquals(0.5, score.inside80(), 0);
    assertEquals(0.75, score.inside95(), 0);
    assertEquals(0.2, score.width80Share(), 1e-12);
    assertEquals(
        "batavia, 5 days ahead, 4 harvests: median error 14.5 %, mean -1.0 %, 50 % inside their"
            + " 80 % interval; the grader knew later weighings for 1",
        score.words());
  }

  @Test
  void aReplayKnowsNothingOfWhatCameLater() {
    LocalDate start = GrowingRafts.TONIGHT.minusDays(20);
    LocalDate harvested = GrowingRafts.TONIGHT.plusDays(5);
    GrowingRafts rafts =
        new GrowingRafts(folder)
            .withPast()
            .plant("R-1", start, Optional.of(harvested.plusDays(1)))
            .photograph("R-1", start, 26)
            .file(
                "harvests.csv",
                "raft,harvested_at,heads,total_weight_g\nR-1," + harvested + "T19:00,10,1600\n");
    LookBack.Leads leads = new LookBack.Leads(List.of(5), ForecastRule.defaults(), LocalDate.MIN);
    LookBackRow row = LookBack.of(rafts.book(), rafts.looks(), GrowingRafts.exact(), leads).get(0);
    RaftForecast then =
        new GrowingRafts(folder.resolve("then"))
            .withPast()
            .raft("R-1", 20)
            .forecast(GrowingRafts.exact())
            .rafts()
            .get(0);

    assertEquals(GrowingRafts.TONIGHT, row.evening());
    assertEquals(1600, row.harvestedG());
    assertEquals(then.weightG(5).orElseThrow().mean(), row.weightG().mean(), 1e-6);
    assertFalse(row.hindsight());
  }

  @Test
  void everyEveningLooksBackAtTheLatestHarvestsOnly() {
    GrowingRafts rafts =
        new GrowingRafts(folder)
            .plant("R-1", LocalDate.of(2027, 3, 1), Optional.empty())
            .file(
                "harvests.csv",
                """
                raft,harvested_at,heads,total_weight_g
                R-1,2027-04-01T08:00,10,1
                R-1,2027-04-02T08:00,10,1
                R-1,2027-04-03T08:00,10,1
                R-1,2027-04-04T08:00,10,1
                """);
    LookBack.Leads leads = LookBack.Leads.latest(rafts.book());

    assertEquals(LocalDate.of(2027, 4, 3), leads.since());
    assertTrue(leads.leadDays().contains(3));
  }
}
