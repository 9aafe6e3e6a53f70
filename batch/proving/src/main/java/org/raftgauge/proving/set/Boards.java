// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;

/** The boards of the proving sets. */
public final class Boards {
  /** 18 holes, 180 mm apart. */
  static final Layout DECK_18 = marked("deck-18", new SiteGrid(6, 3, 120, 160, 180, 180, 0));

  /** 28 holes, staggered. */
  static final Layout DECK_28 = marked("deck-28", new SiteGrid(7, 4, 87, 160, 125, 150, 50));

  /** 18 holes, staggered, without markers, for ponds under a fixed camera. */
  static final Layout POND_18 =
      new Layout(
          "pond-18",
          Optional.empty(),
          new Board(500, 1000),
          new SiteGrid(6, 3, 88, 115, 150, 150, 50),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  private Boards() {}

  private static Layout marked(String name, SiteGrid grid) {
    List<PointMm> centres =
        List.of(
            new PointMm(32, 32),
            new PointMm(568, 32),
            new PointMm(568, 1168),
            new PointMm(32, 1168));
    return new Layout(
        name,
        Optional.empty(),
        new Board(600, 1200),
        grid,
        Optional.of(new CornerMarkers(38, centres)),
        Optional.of(new TagPlace(300, 48, 64)),
        Optional.empty());
  }

  /**
   * Finds a board by name.
   *
   * @param name name of its layout
   * @return the layout
   * @throws IllegalArgumentException if no board has the name
   */
  public static Layout named(String name) {
    return all().stream()
        .filter(layout -> layout.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no board is called \"" + name + "\""));
  }

  /** Returns all boards. */
  static List<Layout> all() {
    return List.of(DECK_18, DECK_28, POND_18);
  }
}
