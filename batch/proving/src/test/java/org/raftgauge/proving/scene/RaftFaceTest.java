// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.set.Boards;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

class RaftFaceTest {
  private static final Tint BROWN = Tint.srgb(0x7d5a3c);
  private static final Tint GREY = Tint.srgb(0x77777a);
  private static final Layout LAYOUT = Boards.named("deck-18");
  private static final PointMm HOLE = LAYOUT.grid().centre(new SiteId(1, 1));

  private static Face at(boolean netCups, double fromCentreMm) {
    Medium medium = new Medium(BROWN, GREY, 0.6, new Medium.Moss(GREY, 0));
    BoardLook look = new BoardLook(GREY, 0, 0, 0, medium, netCups, 1);
    List<Sown> sites =
        LAYOUT.grid().sites().stream()
            .map(s -> new Sown(s, "empty", Optional.empty(), true))
            .toList();
    Raft raft = new Raft("RF-1", LAYOUT, Placement.NONE, look, sites, 1);
    return new RaftFace(raft).at(HOLE.xMm() + fromCentreMm, HOLE.yMm());
  }

  @Test
  void aCollarLiesBetweenCoreAndBoard() {
    // Holes have a radius of 22 mm, the core 0.6 of that: 13.2 mm.
    assertEquals(Face.PLUG, at(false, 0));
    assertEquals(Face.PLUG, at(false, 13.1));
    assertEquals(Face.COLLAR, at(false, 13.3));
    assertEquals(Face.COLLAR, at(false, 21.9));
    assertEquals(Face.BOARD, at(false, 22.1));
  }

  @Test
  void aNetCupsRimLiesAboutTheCollar() {
    assertEquals(Face.COLLAR, at(true, 20.9));
    assertEquals(Face.RIM, at(true, 21.1));
    assertEquals(Face.RIM, at(true, 25.9));
    assertEquals(Face.BOARD, at(true, 26.1));
  }
}
