// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoardPatternsTest {
  private static final int LAST = 7;

  @TempDir Path folder;

  private Farm farm(Farm.Grows first) {
    Farm farm = new Farm(folder, 21).raft("R-0", "P0", 0, LAST + 1, first);
    for (int raft = 1; raft < 12; raft++) {
      farm.raft("R-" + raft, "P" + raft % 2, 0, LAST + 1, (site, dat) -> 2 + 0.12 * dat);
    }
    return farm;
  }

  private static boolean rim(int site) {
    int row = site / Farm.COLUMNS;
    int column = site % Farm.COLUMNS;
    return row == 0 || row == Farm.ROWS - 1 || column == 0 || column == Farm.COLUMNS - 1;
  }

  @Test
  void raftWhoseRimIsSmallSaysSoAndItsSlowSitesToo() {
    Farm farm = farm((site, dat) -> 2 + 0.12 * dat - (rim(site) ? 0.4 : 0));
    Judged raft = farm.group(LAST, Judged.Scope.RAFT, "R-0");
    // exp(-0.4) is 67 %; beliefs after a week still lean a little to the healthy.
    String rim = raft.evidence().replaceAll(".*plants of the rim stand at (\\d+) %.*", "$1");
    assertEquals(67, Integer.parseInt(rim), 7, raft.evidence());
    Set<Pattern> patterns = Set.of(Pattern.EDGE, Pattern.RAFT, Pattern.POND);
    assertTrue(patterns.contains(raft.pattern()), raft.toString());
    List<Judged> slow =
        farm.sites(LAST, "R-0").stream().filter(s -> s.verdict() == Verdict.LAGGING).toList();
    assertTrue(slow.size() >= 8, slow.size() + " lag");
    assertTrue(slow.stream().allMatch(s -> s.pattern() == raft.pattern()));
  }

  @Test
  void raftThatFallsOffAlongTheBoardIsAGradient() {
    Farm farm =
        farm((site, dat) -> 2 + 0.12 * dat + 0.12 * (2.5 - Math.floorDiv(site, Farm.COLUMNS)));
    Judged raft = farm.group(LAST, Judged.Scope.RAFT, "R-0");
    assertEquals(Pattern.GRADIENT, raft.pattern(), raft.evidence());
    assertTrue(raft.evidence().contains("along the board from A1 to F1"), raft.evidence());
  }

  @Test
  void healthyRaftsHaveNoPattern() {
    Farm farm = farm((site, dat) -> 2 + 0.12 * dat);
    for (int day = 2; day <= LAST; day++) {
      for (int raft = 0; raft < 12; raft++) {
        Pattern pattern = farm.group(day, Judged.Scope.RAFT, "R-" + raft).pattern();
        assertTrue(pattern != Pattern.EDGE && pattern != Pattern.GRADIENT, "R-" + raft);
      }
    }
  }
}
