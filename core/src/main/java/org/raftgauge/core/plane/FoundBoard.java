// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

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

  /**
   * Returns the share of the board that lies on a photo: a neighbour at the picture's edge may be
   * mostly outside.
   *
   * @param photo the photo
   * @return 0 to 1, to about a hundredth
   */
  public double inPhotoFraction(RgbImage photo) {
    int n = 12;
    int on = 0;
    for (int i = 0; i < n * n; i++) {
      double x = layout.board().widthMm() * (i % n + 0.5) / n;
      double y = layout.board().lengthMm() * (Math.floorDiv(i, n) + 0.5) / n;
      PointPx p = pose.toPhoto(x, y, 0);
      on +=
          p.xPx() > -0.5
                  && p.yPx() > -0.5
                  && p.xPx() < photo.width() - 0.5
                  && p.yPx() < photo.height() - 0.5
              ? 1
              : 0;
    }
    return (double) on / (n * n);
  }

  /**
   * Returns the same board held.
   *
   * @param why the reason
   * @return the board, not to be measured on
   */
  public FoundBoard withHeld(String why) {
    return new FoundBoard(tag, slot, layout, pose, source, poseErrorMm, halfTurnKnown, notes, why);
  }

  /** Returns the same board with another error, mm. */
  FoundBoard withErrorMm(double errorMm) {
    return new FoundBoard(tag, slot, layout, pose, source, errorMm, halfTurnKnown, notes, held);
  }
}
