// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * The place of one board under a fixed camera.
 *
 * @param name as the station names it
 * @param layout name of the layout of the boards that lie here
 * @param cornersPx the board's corners in the reference photo, clockwise from the A1 corner, four
 * @param refine what the corners are refined on in each photo
 */
public record Slot(String name, String layout, List<PointPx> cornersPx, Refine refine) {

  /** What a slot's corners are refined on. */
  public enum Refine {
    /** The board's own edges and hole grid. */
    EDGES,
    /** Nothing: the corners hold as they are. */
    NONE
  }

  /** Checks that there are four corners. */
  public Slot {
    cornersPx = List.copyOf(cornersPx);
    if (cornersPx.size() != 4) {
      throw new IllegalArgumentException("a slot has four corners, got " + cornersPx.size());
    }
  }
}
