// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import org.raftgauge.core.plane.FoundBoard;

/**
 * Tells whether a photo that was averaged has to be looked at in all its pixels: where no board was
 * seen, or one could not be placed. Tags were read in all the photo's pixels already.
 */
final class CloserLook {
  /** A passing board placed to within this is not held for its place, mm. */
  private static final double PLACED_MM = 2;

  private CloserLook() {}

  /** Says whether a closer look may find a board, or its place. */
  static boolean neededAfter(List<FoundBoard> boards) {
    return boards.isEmpty() || boards.stream().anyMatch(CloserLook::unplaced);
  }

  /** Says whether a board is held because its place is in doubt, which more detail may settle. */
  private static boolean unplaced(FoundBoard board) {
    boolean vague = board.slot().isPresent() || board.poseErrorMm() > PLACED_MM;
    return vague && !board.held().isEmpty();
  }
}
