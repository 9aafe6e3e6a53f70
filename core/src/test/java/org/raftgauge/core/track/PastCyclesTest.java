// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A raft that grows alone is held against what the crop did before, or against the book. */
class PastCyclesTest {
  private static final int CYCLE = 20;

  @TempDir Path folder;

  /** Growth that slows with age; the integral of 0.2 exp(-dat / 15). */
  private static double usual(int dat) {
    return Math.log(8) + 3 * (1 - Math.exp(-dat / 15.0));
  }

  /** Four cycles of one raft each, one after the other, then one that grows as told from day 80. */
  private Farm after(double[] seasons, Farm.Grows last) {
    Farm farm = new Farm(folder, 4);
    for (int cycle = 0; cycle < seasons.length; cycle++) {
      double season = seasons[cycle];
      farm.raft("C-" + cycle, "P1", CYCLE * cycle, CYCLE, (site, dat) -> season + usual(dat));
    }
    return farm.raft("LAST", "P1", 80, CYCLE, last);
  }

  private Farm afterFour(Farm.Grows last) {
    return after(new double[] {0.03, -0.02, 0.01, -0.03}, last);
  }

  @Test
  void raftThatGrowsAsPastCyclesDidIsOnTrack() {
    Farm farm = afterFour((site, dat) -> usual(dat));
    for (int day = 81; day < 100; day += 3) {
      Judged raft = farm.group(day, Judged.Scope.RAFT, "LAST");
      assertEquals(Verdict.ON_TRACK, raft.verdict(), "day " + day);
      assertEquals(Basis.CYCLES, raft.share().orElseThrow().basis());
    }
  }

  @Test
  void raftThatFailsAloneIsCalledByPastCycles() {
    // A loss of 5 % a day from day 5 on; by day 14 it has 64 % of what it should have.
    Farm farm = afterFour((site, dat) -> usual(dat) - 0.05 * Math.max(0, dat - 5));
    assertEquals(Verdict.ON_TRACK, farm.group(85, Judged.Scope.RAFT, "LAST").verdict());
    Judged raft = farm.group(94, Judged.Scope.RAFT, "LAST");
    assertEquals(Verdict.LAGGING, raft.verdict(), raft.toString());
    assertEquals(Pattern.RAFT, raft.pattern() == Pattern.POND ? Pattern.RAFT : raft.pattern());
    assertEquals(Math.exp(-0.45), raft.share().orElseThrow().shareOfExpected(), 0.08);
    long lagging =
        farm.sites(94, "LAST").stream()
            .filter(s -> s.verdict() == Verdict.LAGGING || s.verdict() == Verdict.STALLED)
            .count();
    assertTrue(lagging >= Farm.SITES / 2, lagging + " sites lag");
  }

  @Test
  void pondThatFailsAloneIsNamedAsThePond() {
    Farm farm = afterFour((site, dat) -> usual(dat) - 0.05 * Math.max(0, dat - 5));
    Judged pond = farm.group(94, Judged.Scope.POND, "P1");
    assertEquals(Verdict.LAGGING, pond.verdict(), pond.evidence());
  }

  @Test
  void withoutPastCyclesAWholeRaftsFaultCannotBeSeen() {
    Farm farm =
        new Farm(folder, 4)
            .raft("LAST", "P1", 80, CYCLE, (site, d) -> usual(d) - 0.05 * Math.max(0, d - 5));
    Judged raft = farm.group(94, Judged.Scope.RAFT, "LAST");
    assertEquals(Verdict.NOT_TOLD, raft.verdict());
    assertTrue(
        raft.evidence()
            .startsWith("cannot be told yet as a whole: no other raft of its cohort was seen"),
        raft.evidence());
    Judged site =
        farm.sites(94, "LAST").stream().filter(s -> s.verdict().isCalm()).findFirst().orElseThrow();
    assertEquals(Verdict.NOT_TOLD, site.verdict());
    assertEquals(Basis.RAFT, site.share().orElseThrow().basis());
    assertTrue(site.evidence().contains("judging by the raft's own other plants"), site.evidence());
  }

  @Test
  void seasonsThatDifferWidenWhatCountsAsHealthy() {
    // Cycles that differ by 20 % among each other: 15 % under their middle is no fault.
    Farm farm = after(new double[] {0.2, -0.2, 0.25, -0.15}, (site, dat) -> usual(dat) - 0.15);
    for (int day = 84; day < 100; day += 5) {
      Judged raft = farm.group(day, Judged.Scope.RAFT, "LAST");
      assertTrue(raft.verdict().isCalm(), "day " + day + ": " + raft);
    }
  }

  @Test
  void siteOfALoneRaftIsHeldAgainstItsNeighboursToo() {
    Farm farm = afterFour((site, dat) -> usual(dat) - (site == 9 ? 0.6 : 0));
    List<Judged> slow =
        farm.sites(90, "LAST").stream().filter(s -> s.verdict() == Verdict.LAGGING).toList();
    assertEquals(1, slow.size(), slow.toString());
    assertEquals(Farm.site(9), slow.get(0).place().site().orElseThrow());
    assertEquals(Basis.CYCLES, slow.get(0).share().orElseThrow().basis());
  }

  @Test
  void winterIsNotSickness() {
    // Two rafts in two ponds grow 15 % less than ever before: what they share is the season's.
    Farm farm = new Farm(folder, 4);
    for (int cycle = 0; cycle < 4; cycle++) {
      farm.raft("C-" + cycle, "P1", CYCLE * cycle, CYCLE, (site, dat) -> usual(dat));
    }
    farm.raft(
        "W-1", "P1", 80, CYCLE, (site, dat) -> Math.log(8) + 0.85 * (usual(dat) - Math.log(8)));
    farm.raft(
        "W-2", "P2", 80, CYCLE, (site, dat) -> Math.log(8) + 0.85 * (usual(dat) - Math.log(8)));
    Judged raft = farm.group(96, Judged.Scope.RAFT, "W-1");
    assertEquals(Verdict.ON_TRACK, raft.verdict());
    // ln 8 + 3 (1 - exp(-16.75 / 15)) is short by 15 % of 2.02: -0.30, that is -26 %.
    String evidence = raft.evidence();
    int from = evidence.indexOf("past cycles of its crop, shifted by ") + 36;
    int shift = Integer.parseInt(evidence.substring(from, evidence.indexOf(" %", from)));
    assertEquals(-26, shift, 4, evidence);
  }

  @Test
  void curveInTheBookShowsTheFaultOfARaftThatNeverHadABefore() {
    // 420 exp(-exp(-0.11 (t - 16))) at 14.75 days is 133 cm2.
    Farm farm =
        new Farm(folder, 4)
            .crop(
                "    growth_curve: {model: gompertz, asymptote_cm2: 420, rate_per_day: 0.11,"
                    + " midpoint_dat: 16}\n")
            .raft(
                "NEW",
                "P1",
                0,
                16,
                (site, dat) -> Math.log(420) - Math.exp(-0.11 * (dat + 0.75 - 16)))
            .raft(
                "BAD",
                "P2",
                40,
                16,
                (site, dat) -> Math.log(420) - Math.exp(-0.11 * (dat + 0.75 - 16)) - 0.06 * dat);
    Judged good = farm.group(14, Judged.Scope.RAFT, "NEW");
    assertEquals(Verdict.NOT_TOLD, good.verdict());
    assertEquals(Basis.CROP, good.share().orElseThrow().basis());
    assertEquals(133, good.share().orElseThrow().expectedAreaCm2(), 1);
    assertTrue(
        good.evidence().endsWith("expected is the crop's curve in the book, shifted by +0 %"),
        good.evidence());
    assertEquals(Verdict.LAGGING, farm.group(54, Judged.Scope.RAFT, "BAD").verdict());
  }
}
