// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cycles of warm and cold weeks, one raft each, then a warm one that is to be judged. */
class DegreeDaysTest {
  private static final int CYCLE = 20;
  private static final int LAST = 80;

  /** Mean of each cycle's days, degrees C; the days of a cycle swing by 2 about it. */
  private static final double[] MEAN_C = {24, 15, 20, 16, 23};

  @TempDir Path folder;
  private Path other;

  @BeforeEach
  void makeOther() throws Exception {
    other = Files.createDirectory(folder.resolve("other"));
  }

  private static double meanC(int day) {
    return MEAN_C[Math.min(MEAN_C.length - 1, day / CYCLE)] + 2 * Math.sin(day);
  }

  /** Degree-days over 4 C up to 18:00 of a day, summed day by day. */
  private static double degreeDays(int from, int dat) {
    double sum = 0.75 * (meanC(from + dat) - 4);
    for (int day = from; day < from + dat; day++) {
      sum += meanC(day) - 4;
    }
    return sum;
  }

  private static double byWarmth(int from, int dat) {
    return Math.log(8) + 3 * (1 - Math.exp(-degreeDays(from, dat) / 240));
  }

  private static double byDays(int from, int dat) {
    return Math.log(8) + 3 * (1 - Math.exp(-(dat + 0.75) / 15));
  }

  private interface Usual {
    double ln(int from, int dat);
  }

  private static Farm farm(Path folder, Usual usual, double lossADay) {
    Farm farm = new Farm(folder, 4);
    for (int from = 0; from < LAST; from += CYCLE) {
      int start = from;
      farm.raft("C-" + from, "P1", from, CYCLE, (site, dat) -> usual.ln(start, dat));
    }
    return farm.raft(
        "LAST",
        "P1",
        LAST,
        CYCLE,
        (site, dat) -> usual.ln(LAST, dat) - lossADay * Math.max(0, dat - 5));
  }

  private static Farm withClimate(Farm farm, int from) {
    for (int day = from; day < LAST + CYCLE; day++) {
      farm.climate(day, meanC(day));
    }
    return farm;
  }

  private static Judged last(Farm farm, int day) {
    return farm.group(day, Judged.Scope.RAFT, "LAST");
  }

  @Test
  void cyclesThatFollowTheTemperatureAreHeldAgainstDegreeDays() {
    Farm farm = withClimate(farm(folder, DegreeDaysTest::byWarmth, 0), 0);
    for (int day = LAST + 6; day < LAST + 16; day += 3) {
      Judged raft = last(farm, day);
      assertEquals(Verdict.ON_TRACK, raft.verdict(), raft.evidence());
      assertEquals(Basis.DEGREE_DAYS, raft.share().orElseThrow().basis());
      // What was simulated; 24 plants that differ by 12 % tell their middle within 3 %.
      double exact = Math.exp(byWarmth(LAST, day - LAST));
      assertEquals(exact, raft.share().orElseThrow().expectedAreaCm2(), 0.08 * exact);
    }
    assertTrue(
        last(farm, LAST + 12)
            .evidence()
            .contains("past cycles of its crop, on degree-days, shifted"));
  }

  @Test
  void shareOfASlowRaftComesOutRightOnDegreeDaysAndNotOnDays() {
    Farm farm = withClimate(farm(folder, DegreeDaysTest::byWarmth, 0.05), 0);
    Judged raft = last(farm, LAST + 14);
    assertEquals(Verdict.LAGGING, raft.verdict(), raft.evidence());
    // Simulated: a loss of 0.05 a day over nine days.
    assertEquals(Math.exp(-0.45), raft.share().orElseThrow().shareOfExpected(), 0.06);
    Judged onDays = last(farm(other, DegreeDaysTest::byWarmth, 0.05), LAST + 14);
    assertTrue(
        Math.abs(onDays.share().orElseThrow().shareOfExpected() - Math.exp(-0.45)) > 0.1,
        "on days, a warm cycle hides the loss: " + onDays.evidence());
  }

  @Test
  void cyclesThatDoNotFollowTheTemperatureStayOnDaysAsWithoutClimate() {
    Farm with = withClimate(farm(folder, DegreeDaysTest::byDays, 0.05), 0);
    Farm without = farm(other, DegreeDaysTest::byDays, 0.05);
    List<Judged> judged = with.judge(LAST + 14);
    assertEquals(without.judge(LAST + 14), judged);
    assertEquals(Basis.CYCLES, last(with, LAST + 14).share().orElseThrow().basis());
  }

  @Test
  void temperaturesOfTheLastTwoCyclesAloneChangeNothing() {
    Farm with = withClimate(farm(folder, DegreeDaysTest::byWarmth, 0.05), LAST - CYCLE);
    Farm without = farm(other, DegreeDaysTest::byWarmth, 0.05);
    assertEquals(without.judge(LAST + 14), with.judge(LAST + 14));
  }
}
