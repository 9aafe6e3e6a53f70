// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreTrayTest {
  @TempDir Path folder;

  @Test
  void emergedAndBareCellsOfARenderedTrayAreFoundWithinAPoint() throws Exception {
    // A grey tray whose plugs are pale brown and wider than the hole that the pitch lets expect.
    TrayPlan plan = new TrayPlan("TS-1", TrayPlan.CELLS_288, 41000);
    ScoreTray score = ScoreTray.of(plan, List.of(7), folder);
    ScoreTray.Share share = score.emerged().get(0);
    // Exact truth of the rendering: cells that were given a seedling.
    long sown = SowTray.cells(plan).stream().filter(c -> c.emerged(7.75)).count();
    assertEquals(sown, share.truth());
    assertEquals(0, share.points(), 1, "found " + share.found() + " of " + share.truth());
    assertTrue(share.bare() <= 1, share.bare() + " bare cells show canopy");
    assertEquals(288 - sown, score.empties().truth());
    assertEquals(score.empties().truth(), score.empties().found(), 2);
    assertEquals(List.of(), score.refused());
  }

  @Test
  void cellsComeOutInTheSharesThatTheyAreSownIn() {
    List<SowTray.Cell> cells = SowTray.cells(new TrayPlan("TL-1", TrayPlan.CELLS_512, 3));
    assertEquals(512, cells.size());
    // Binomial of 512 at 6 % and 4 %: 31 and 20, four standard deviations are 21 and 18.
    assertEquals(31.0, (double) cells.stream().filter(c -> !c.emerged(1e9)).count(), 21);
    assertEquals(20.0, (double) cells.stream().filter(SowTray.Cell::doubled).count(), 18);
    assertTrue(cells.stream().noneMatch(c -> c.doubled() && !c.emerged(1e9)));
  }

  @Test
  void seedlingUnfoldsInADayAndThenGrowsByASharePerDay() {
    // By hand from the rule: 0.12 at once, 0.45 after a day, times exp(0.18) after two.
    assertEquals(0.12, SowTray.areaCm2(0), 1e-12);
    assertEquals(0.45, SowTray.areaCm2(1), 1e-12);
    assertEquals(0.45 * Math.exp(0.18), SowTray.areaCm2(2), 1e-12);
  }
}
