// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.TagPlace;

class NeededDetailTest {
  private static final Layout RAFT = layout(180);
  private static final Layout TRAY = layout(22);

  @Test
  void aRaftIsDrawnAtMostOfAMillimetreAndATrayFinely() {
    assertEquals(0.85, NeededDetail.deckMmPerPx(RAFT), 1e-12);
    // 22 mm over 200 px.
    assertEquals(0.11, NeededDetail.deckMmPerPx(TRAY), 1e-12);
  }

  @Test
  void asManyPixelsAreAveragedAsFitIntoAMillimetreButForTrays() {
    // 1600 mm over 7000 px of focal length: 0.23 mm a pixel, four times in 1; at half the size
    // twice.
    assertEquals(4, NeededDetail.parts(station(7000), List.of(RAFT), 4000));
    assertEquals(2, NeededDetail.parts(station(7000), List.of(RAFT), 2000));
    assertEquals(1, NeededDetail.parts(station(7000), List.of(RAFT, TRAY), 4000));
  }

  @Test
  void markersAndTagsStayReadable() {
    // A marker of 12 mm over 24 px: 0.5 mm, twice 0.23.
    Layout small =
        marked(
            Optional.of(new CornerMarkers(12, Collections.nCopies(4, new PointMm(20, 20)))),
            Optional.empty());
    assertEquals(2, NeededDetail.parts(station(7000), List.of(small), 4000));
    // A tag of 60 mm over 80 px: 0.75 mm, three times 0.23.
    Layout tagged = marked(Optional.empty(), Optional.of(new TagPlace(90, 90, 60)));
    assertEquals(3, NeededDetail.parts(station(7000), List.of(tagged), 4000));
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

  private static Layout marked(Optional<CornerMarkers> markers, Optional<TagPlace> tag) {
    Layout plain = layout(180);
    return new Layout(
        plain.name(), plain.from(), plain.board(), plain.grid(), markers, tag, Optional.empty());
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
