// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.proving.season.ProveSeason;

/** Small seasons through the whole of book, series, verdicts and score. */
class ScoreVerdictsTest {
  @TempDir private Path folder;

  @Test
  void seasonsOfAFewRaftsFindMostSmallSitesAndBlameNoPlantForACamera() throws IOException {
    Map<String, VerdictScore> scores = ProveSeason.run(folder, 7, 24);
    assertEquals(5, scores.size());
    for (Map.Entry<String, VerdictScore> season : scores.entrySet()) {
      VerdictScore score = season.getValue();
      assertTrue(score.small().all() > 20, season.getKey());
      // 200 rafts reach 99 %; one raft a pond and start makes the weakest cohorts there are.
      assertTrue(score.small().share() > 0.8, season.getKey() + " " + score.small().share());
      assertTrue(score.falsePerThousand() < 15, season.getKey() + " " + score.falsePerThousand());
      assertTrue(score.small().days(0.5) <= 2, season.getKey());
    }
  }

  @Test
  void recallCountsWhatIsCalledAndHowLongItTook() {
    VerdictScore score = new VerdictScore();
    score.recall("lags").add(Optional.of(2.0));
    score.recall("lags").add(Optional.empty());
    score.recall("stalls").add(Optional.of(0.0));
    assertEquals(3, score.small().all());
    assertEquals(2.0 / 3, score.small().share(), 1e-12);
    assertEquals(2, score.byPlight().get("lags").days(0.9), 1e-12);
    score.healthyDay(true);
    score.healthyDay(false);
    assertEquals(500, score.falsePerThousand(), 1e-12);
    String row = ScoreTable.row("x", score);
    assertTrue(
        row.startsWith("| x | 2 of 3, 66.7 % | none | 2, 2 | 1 of 2, 500.00 | 0.00 | none |"), row);
  }
}
