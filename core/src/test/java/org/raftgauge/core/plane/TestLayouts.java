// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.TagPlace;

/** Layouts and stations for tests. */
final class TestLayouts {

  private TestLayouts() {}

  /** The board of the design page's example. */
  static Layout deck18() {
    return new Layout(
        "deck-18",
        Optional.empty(),
        new Board(600, 1200),
        new SiteGrid(6, 3, 120, 150, 180, 180, 0),
        Optional.of(
            new CornerMarkers(
                36,
                List.of(
                    new PointMm(30, 30),
                    new PointMm(570, 30),
                    new PointMm(570, 1170),
                    new PointMm(30, 1170)))),
        Optional.of(new TagPlace(300, 42, 60)),
        Optional.empty());
  }

  /** The same board without marks, as it floats in a pond. */
  static Layout pond18() {
    Layout deck = deck18();
    return new Layout(
        "pond-18",
        Optional.empty(),
        deck.board(),
        deck.grid(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static KnownLayouts onlyDeck18() {
    return new KnownLayouts(raft -> Optional.empty(), List.of(deck18()), Optional.empty());
  }

  static Station passing(int width, int height, Lens lens) {
    return new Station(
        "bench", Station.Kind.PASSING, 1, width, height, lens, 1600, List.of(), Duration.ZERO);
  }

  static Station fixed(int width, int height, Lens lens, List<Slot> slots) {
    return new Station(
        "pond", Station.Kind.FIXED, 1, width, height, lens, 1600, slots, Duration.ZERO);
  }
}
