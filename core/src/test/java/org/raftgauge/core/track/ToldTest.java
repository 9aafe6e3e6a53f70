// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.Crop;

/** What cannot be told is not said to be on track. */
class ToldTest {
  /** Lagging under 0.78, ahead over 1.35: the design's. */
  private static final Crop.Limits LIMITS = Crop.Limits.defaults();

  @TempDir Path folder;

  @Test
  void intervalFromLaggingToAheadTellsNothing() {
    assertFalse(Told.isNarrow(0.12, 4.5, LIMITS));
    assertFalse(Told.isNarrow(0.77, 1.36, LIMITS));
    assertTrue(Told.isNarrow(0.78, 4.5, LIMITS), "at least as large as the limit allows");
    assertTrue(Told.isNarrow(0.12, 1.35, LIMITS), "not ahead");
  }

  @Test
  void aLoneRaftIsNotToldOnItsFirstEveningAndNoRateIsSaid() {
    Farm farm = new Farm(folder, 4).raft("ONE", "P1", 1, 1, (site, day) -> 3);
    assertEquals(Verdict.NOT_TOLD, farm.group(1, Judged.Scope.POND, "P1").verdict());
    assertEquals(Verdict.NOT_TOLD, farm.group(1, Judged.Scope.RAFT, "ONE").verdict());
    List<Judged> sites = farm.sites(1, "ONE");
    assertEquals(Farm.SITES, sites.size());
    for (Judged site : sites) {
      assertNotEquals(Verdict.ON_TRACK, site.verdict());
      assertFalse(site.evidence().contains("grows"), site.evidence());
    }
    Judged calm = sites.stream().filter(s -> s.verdict().isCalm()).findFirst().orElseThrow();
    assertTrue(
        calm.evidence().endsWith("nothing outside the raft is there to compare with"),
        calm.evidence());
  }
}
