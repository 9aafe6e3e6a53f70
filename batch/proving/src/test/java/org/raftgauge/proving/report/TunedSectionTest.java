// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.LookScore.Errors;
import org.raftgauge.proving.accuracy.LookScore.FalseArea;

class TunedSectionTest {
  private static LookScore score(String look, double median, int over2) {
    return new LookScore(
        look,
        new Errors(20, 1, 0, median, 3 * median, 0, 0),
        new Errors(4, 0, 0, 2 * median, 0.2, 0, 0),
        new FalseArea(3, 0, 0, 2.5, over2));
  }

  @Test
  void eachLookStandsBesideItselfAndAMissingOneLeavesGaps() {
    String table =
        TunedSection.table(
            List.of(score("sun", 0.02, 1)), List.of(score("sun", 0.03, 2), score("dim", 0.05, 0)));
    List<String> rows = table.lines().skip(2).toList();
    assertEquals(
        "| sun | 20 | 2.0 % | 6.0 % | 20 | 3.0 % | 9.0 % | 4.0 % | 6.0 % | 1 | 2 |", rows.get(0));
    assertEquals("| dim |  | | | 20 | 5.0 % | 15.0 % |  | 10.0 % |  | 0 |", rows.get(1));
  }
}
