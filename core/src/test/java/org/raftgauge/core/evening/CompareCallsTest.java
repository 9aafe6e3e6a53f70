// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.report.AgreeTable;
import org.raftgauge.core.track.Verdict;

/** The head grower's calls against the verdicts of {@link SmallFarm}. */
class CompareCallsTest {
  private static final String HEAD = "raft,site,called_on,call,by,note\n";

  @TempDir Path folder;

  private Agreement compare(SmallFarm farm, String... calls) {
    Seen seen = farm.file("calls.csv", HEAD + String.join("\n", calls) + "\n").seen(10);
    return CompareCalls.of(
        farm.book(), evening -> CloseEvening.verdicts(farm.book(), seen, evening));
  }

  private SmallFarm farm() {
    return new SmallFarm(folder)
        .share(1, "A1", 0.5)
        .share(2, "A1", 0.5)
        .share(3, "A1", 0.68)
        .share(4, "A1", 0.68);
  }

  @Test
  void sameWordsAgreeInFull() {
    Agreement agreement =
        compare(
            farm(),
            "R-1,A1,2027-03-09,lagging,,",
            "R-2,A1,2027-03-10,lagging,,",
            "R-5,A1,2027-03-10,on-track,,",
            "R-6,A1,2027-03-09,on-track,,");
    assertEquals(1, agreement.kappa().orElseThrow().kappa(), 1e-12);
    assertEquals(2, agreement.count(Verdict.LAGGING, Verdict.LAGGING));
  }

  @Test
  void halfWrongCallsGiveTheKappaWorkedByHand() {
    Agreement agreement =
        compare(
            farm(),
            "R-1,A1,2027-03-10,lagging,,",
            "R-2,A1,2027-03-10,on-track,Ana,looked fine",
            "R-5,A1,2027-03-10,on-track,,",
            "R-6,A1,2027-03-10,lagging,,");
    // Agreement 2 of 4; by chance 0.5 * 0.5 + 0.5 * 0.5 = 0.5; kappa 0.
    assertEquals(0, agreement.kappa().orElseThrow().kappa(), 1e-12);
    List<String> lines = AgreeTable.csv(agreement, c -> "none").lines().toList();
    assertEquals(
        "called_on,raft,site,call,verdict,agrees,share_of_expected,share_lo95,share_hi95,evidence,"
            + "by,note,picture",
        lines.get(0));
    assertTrue(
        lines.get(2).startsWith("2027-03-10,R-2,A1,on-track,lagging,false,0."), lines.get(2));
    assertTrue(lines.get(2).endsWith(",Ana,looked fine,none"), lines.get(2));
  }

  @Test
  void callOfARaftThatWasNotPhotographedHasNoVerdict() {
    Agreement agreement =
        compare(farm().missed(5, 10), "R-5,A1,2027-03-11,on-track,,", "R-6,,2027-03-11,on-track,,");
    assertTrue(agreement.cases().get(0).judged().isEmpty());
    assertEquals(Verdict.ON_TRACK, agreement.cases().get(1).judged().orElseThrow().verdict());
    assertTrue(agreement.kappa().isEmpty(), "one word alone tells nothing beyond chance");
    assertTrue(agreement.threshold().isEmpty(), "no call of lagging");
  }

  @Test
  void growerWhoCallsLateGetsALowerLimit() {
    // He calls lagging at 0.5 of the expected area and on track at 0.68.
    String[] calls = {
      "R-1,A1,2027-03-09,lagging,,",
      "R-2,A1,2027-03-10,lagging,,",
      "R-3,A1,2027-03-09,on-track,,",
      "R-4,A1,2027-03-10,on-track,,",
      "R-1,A1,2027-03-10,lagging,,",
      "R-3,A1,2027-03-10,on-track,,"
    };
    Agreement.Threshold best = compare(farm(), calls).threshold().orElseThrow();
    assertTrue(best.laggingShare() < 0.7, best.toString());
    assertEquals(1, best.agreement(), 1e-12);
    assertEquals(1, best.crossValidated(), 1e-12);
    assertTrue(best.asSet() < 1, "0.78 calls the plants at 0.68 lagging");
    assertEquals(2, best.groups(), "two evenings");
  }
}
