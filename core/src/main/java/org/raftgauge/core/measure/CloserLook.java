// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import org.raftgauge.core.plane.FoundBoard;

/**
 * Tells whether a photo that was looked at coarsely has to be looked at in more detail: where its
 * plants are small, none was seen, or no board could be placed. Tags were read in all the photo's
 * pixels already.
 */
final class CloserLook {
  /**
   * Where three quarters of the plants are of this size and more they are measured as well in
   * coarse pixels, cm2. Rendered butterhead at 12 megapixels, 5 to 20 cm2 at 0.5 and at 0.9 mm a
   * pixel: median error 1.0 and 0.9 % (33 plants, seeds 7043 and 7044).
   */
  private static final double LARGE_CM2 = 20;

  /** A passing board placed to within this is not held for its place, mm. */
  private static final double PLACED_MM = 2;

  private CloserLook() {}

  /**
   * Says whether a closer look is needed.
   *
   * @param boards those found that were wanted
   * @param rafts what was measured of each
   */
  static boolean neededAfter(List<FoundBoard> boards, List<RaftMeasure> rafts) {
    boolean needed = boards.isEmpty();
    for (int i = 0; i < boards.size(); i++) {
      needed |= rafts.get(i).held().isEmpty() ? small(rafts.get(i)) : unplaced(boards.get(i));
    }
    return needed;
  }

  /** Says whether a board is held because its place is in doubt, which more detail may settle. */
  private static boolean unplaced(FoundBoard board) {
    boolean vague = board.slot().isPresent() || board.poseErrorMm() > PLACED_MM;
    return vague && !board.held().isEmpty();
  }

  private static boolean small(RaftMeasure raft) {
    double[] areas =
        raft.sites().stream()
            .flatMapToDouble(site -> site.visibleAreaCm2().stream())
            .filter(area -> area > 0)
            .sorted()
            .toArray();
    return areas.length == 0 || areas[areas.length / 4] < LARGE_CM2;
  }
}
