// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Station;

class NeededDetailTest {
  private static final Layout RAFT = layout(180);
  private static final Layout TRAY = layout(22);

  @Test
  void aRaftIsSeenAtSevenTenthsOfAMillimetreAndATrayFinely() {
    assertEquals(0.7, NeededDetail.mmPerPx(RAFT), 1e-12);
    // 22 mm over 200 px.
    assertEquals(0.11, NeededDetail.mmPerPx(TRAY), 1e-12);
  }

  @Test
  void asManyPixelsAreAveragedAsFitIntoTheDetailNeeded() {
    // 1600 mm over 5000 px of focal length: 0.32 mm a pixel, twice in 0.7; at half the size once.
    assertEquals(2, NeededDetail.parts(station(5000), List.of(RAFT), 4000));
    assertEquals(1, NeededDetail.parts(station(5000), List.of(RAFT), 2000));
    // 0.16 mm a pixel.
    assertEquals(4, NeededDetail.parts(station(10000), List.of(RAFT), 4000));
    assertEquals(1, NeededDetail.parts(station(10000), List.of(RAFT, TRAY), 4000));
  }

  @Test
  void withoutALayoutNothingIsAveraged() {
    assertEquals(1, NeededDetail.parts(station(10000), List.of(), 4000));
  }

  private static Station station(double focalPx) {
    Lens lens = new Lens(focalPx, focalPx, 1999.5, 1499.5, 0, 0, 0, 0, 0);
    return new Station(
        "bench", Station.Kind.PASSING, 1, 4000, 3000, lens, 1600, List.of(), Duration.ZERO);
  }

  private static Layout layout(double pitchMm) {
    return new Layout(
        "board",
        Optional.empty(),
        new Board(3 * pitchMm, 3 * pitchMm),
        new SiteGrid(2, 2, pitchMm, pitchMm, pitchMm, pitchMm, 0),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
