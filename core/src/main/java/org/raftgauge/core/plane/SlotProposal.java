// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.pixels.PointPx;

/**
 * A board that lies under a fixed camera, to become a slot.
 *
 * @param layout the layout that explains it best
 * @param pose the camera over it
 * @param cornersPx its corners in the photo, clockwise from the origin corner
 * @param edgeShare mean share of its outline that shows, 0..1
 * @param originKnown whether the photo tells which end is A1's
 * @param holes its hole grid, where enough of it shows
 */
public record SlotProposal(
    Layout layout,
    CameraPose pose,
    List<PointPx> cornersPx,
    double edgeShare,
    boolean originKnown,
    Optional<HoleGrid> holes) {

  /** Copies the corners. */
  public SlotProposal {
    cornersPx = List.copyOf(cornersPx);
  }
}
