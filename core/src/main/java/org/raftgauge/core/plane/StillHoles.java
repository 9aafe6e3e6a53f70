// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Asks holes and plants whether a camera hangs as it did, where dark boards on dark water show too
 * little of their edges: a witness of its own, good for shifts under half a pitch.
 */
final class StillHoles {
  /** Boards that float in a pond wander by about this much, mm (working value). */
  private static final double WANDERS_MM = 15;

  /** A grid's place that is less sure than this says nothing, mm. */
  private static final double LEAST_SURE_MM = 4;

  private StillHoles() {}

  /**
   * Says whether the grids of the boards lie where they should, as far as they show.
   *
   * @param photo the photo
   * @param poses where each board should lie
   * @param layouts their layouts, in the same order
   * @return true if at least half of the boards show a grid, and each one that does lies there
   */
  static boolean tell(RgbImage photo, List<CameraPose> poses, List<Layout> layouts) {
    int still = 0;
    int moved = 0;
    for (int i = 0; i < poses.size(); i++) {
      Optional<HoleGrid> grid = HoleGrid.fit(photo, poses.get(i), layouts.get(i));
      if (grid.isPresent() && grid.get().shiftErrorMm() < LEAST_SURE_MM) {
        boolean near = Math.hypot(grid.get().shiftXMm(), grid.get().shiftYMm()) < WANDERS_MM;
        still += near ? 1 : 0;
        moved += near ? 0 : 1;
      }
    }
    return moved == 0 && still > 0 && 2 * still >= poses.size();
  }
}
