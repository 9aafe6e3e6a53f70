// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;

class LearnHarvestsTest {
  private static final OffsetDateTime LAST = OffsetDateTime.parse("2027-03-20T08:00Z");

  /** A line of slope 1.25 whose level alone is uncertain: variance 0.01. */
  private static Grader grader() {
    return OpenLine.grader(-2.5, 1.25, 0.01);
  }

  private static HarvestLesson lesson(int line, int cohortDay, double off) {
    return new HarvestLesson(
        new HarvestTotal(line, "R" + line, LAST.minusDays(line), 18, 2000),
        LocalDate.of(2027, 2, cohortDay),
        off,
        List.of(1.0, 6.0),
        0.04,
        0.03);
  }

  private static RegimeFit open(Grader grader) {
    return grader.fit(Regime.OPEN).orElseThrow();
  }

  @Test
  void oneRaftMovesTheLevelByItsShareOfTheVariance() {
    // Normal with known variances, by hand: errors 0.03^2 + 0.04^2 = 0.0025; gain 0.01 / 0.0125.
    Grader learnt = LearnHarvests.of(grader(), List.of(lesson(2, 1, 0.06)));

    assertEquals(-2.5 + 0.8 * 0.06, open(learnt).coefficients()[0], 1e-12);
    assertEquals(1.25, open(learnt).coefficients()[1], 1e-12);
    assertEquals(0.01 * 0.2, open(learnt).covariance()[0][0], 1e-12);
    assertEquals(
        List.of(
            "open: 1 harvested raft weighed 6.2 % more than single plants tell, and taught the"
                + " fit"),
        learnt.remarks());
  }

  @Test
  void raftsOfOneCohortCountForFewer() {
    // By hand, means of two: of one cohort 0.03^2 / 2 + 0.04^2 = 0.00205, of two (that) 0.00125.
    Grader one = LearnHarvests.of(grader(), List.of(lesson(2, 1, 0.06), lesson(3, 1, 0.06)));
    Grader two = LearnHarvests.of(grader(), List.of(lesson(2, 1, 0.06), lesson(3, 9, 0.06)));

    assertEquals(-2.5 + 0.06 * 0.01 / 0.01205, open(one).coefficients()[0], 1e-12);
    assertEquals(-2.5 + 0.06 * 0.01 / 0.01125, open(two).coefficients()[0], 1e-12);
  }

  @Test
  void theGraderIsAsYoungAsTheLastHarvestThatTaughtIt() {
    Grader learnt = LearnHarvests.of(grader(), List.of(lesson(2, 1, 0.01), lesson(3, 9, 0.01)));

    assertEquals("2027-03-18T08:00Z", learnt.origin().lastWeighed());
    assertEquals("x; 2 harvested rafts", learnt.origin().source());
  }

  @Test
  void aSlippedTotalIsNamedAndLeftOut() {
    Grader learnt = LearnHarvests.of(grader(), List.of(lesson(2, 1, 0.0), lesson(3, 9, -2.3)));

    assertEquals(-2.5, open(learnt).coefficients()[0], 1e-12);
    assertEquals(
        "harvests.csv:3: R3 weighed 90 % less than its photos tell, too far to teach: left out;"
            + " check heads, weight and raft",
        learnt.remarks().get(0));
  }

  @Test
  void totalsOfAnotherStateTeachNothing() {
    // Eight cohorts a third lighter: sd of their mean is 0.1, mostly the grader's own.
    List<HarvestLesson> trimmed =
        IntStream.rangeClosed(1, 8).mapToObj(i -> lesson(i, i, -0.33)).toList();
    Grader learnt = LearnHarvests.of(grader(), trimmed);

    assertEquals(-2.5, open(learnt).coefficients()[0], 1e-12);
    assertTrue(learnt.remarks().get(0).contains("taught nothing"), learnt.remarks().toString());
    assertEquals("2027-03-15T08:00Z", learnt.origin().lastWeighed());
  }

  @Test
  void withoutHarvestsTheGraderStaysAsItIs() {
    Grader grader = grader();

    assertSame(grader, LearnHarvests.of(grader, List.of()));
  }
}
