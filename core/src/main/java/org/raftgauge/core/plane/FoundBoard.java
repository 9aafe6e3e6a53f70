// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;

/**
 * A board found in a photo.
 *
 * @param tag what its tag says, where one was read
 * @param slot the slot it lies in, for a fixed station
 * @param layout its layout
 * @param pose the camera over it
 * @param source what its place was found from
 * @param poseErrorMm standard error of a place on its deck, mm, above 0
 * @param halfTurnKnown whether the picture itself tells its origin end
 * @param notes what was left out or mended on the way
 * @param held why its place is too unsure to measure on; empty where it is sure
 */
public record FoundBoard(
    Optional<String> tag,
    Optional<String> slot,
    Layout layout,
    CameraPose pose,
    PoseSource source,
    double poseErrorMm,
    boolean halfTurnKnown,
    List<String> notes,
    String held) {

  /** Copies the notes and checks the error. */
  public FoundBoard {
    notes = List.copyOf(notes);
    if (!(poseErrorMm > 0)) {
      throw new IllegalArgumentException("poseErrorMm must be > 0, got " + poseErrorMm);
    }
  }

  /** Returns the deck mm that a photo px covers at the board's middle. */
  public double mmPerPx() {
    return pose.mmPerPxAt(BoardPlaces.centre(layout.board()));
  }
}
