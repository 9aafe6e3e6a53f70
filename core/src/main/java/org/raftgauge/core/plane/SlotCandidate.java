// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Layout;

/**
 * A rectangle of the coarse map of the deck that may be a board.
 *
 * @param layout the board's layout
 * @param pose the camera over it, roughly
 * @param score mean share of its outline that is an edge, 0..1
 * @param box where it lies on the map
 */
record SlotCandidate(Layout layout, CameraPose pose, double score, DeckBox box) {

  /** Returns the area in common with another over the smaller of both, 0..1. */
  double overlap(SlotCandidate other) {
    return box.overlap(other.box);
  }
}
