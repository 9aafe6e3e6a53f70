// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import java.util.List;
import org.raftgauge.core.book.Layout;
import org.raftgauge.proving.solid.Placement;

/**
 * A board and what grows on it.
 *
 * @param id raft id, also on its tag
 * @param layout the board, its holes, markers and tag
 * @param place where its origin corner lies and how it is turned
 * @param look how the board looks
 * @param sites what each site holds, in the grid's order
 * @param firstLabel label of the first site in label pictures; 0: nobody measures this raft
 */
public record Raft(
    String id, Layout layout, Placement place, BoardLook look, List<Sown> sites, int firstLabel) {

  /** Copies the sites. */
  public Raft {
    sites = List.copyOf(sites);
  }

  /** Says whether the raft is measured, and not just a neighbour in view. */
  public boolean measured() {
    return firstLabel > 0;
  }
}
