// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Board;

/**
 * The scale of a deck picture and the margin about its board.
 *
 * @param mmPerPx mm of deck per pixel, above 0
 * @param marginMm deck shown beyond the board's edges, mm, at least 0
 */
public record DeckScale(double mmPerPx, double marginMm) {

  /** Checks both. */
  public DeckScale {
    if (!(mmPerPx > 0) || !(marginMm >= 0) || !(marginMm < 1e5)) {
      throw new IllegalArgumentException(
          "mmPerPx must be > 0 and marginMm >= 0, got " + mmPerPx + ", " + marginMm);
    }
  }

  /**
   * Returns the photo's own scale at the board's middle: nothing is lost and little is drawn twice.
   *
   * @param pose the camera over the board
   * @param board its size
   * @param marginMm deck shown beyond the board's edges, mm
   * @return the scale
   */
  public static DeckScale ofPhoto(CameraPose pose, Board board, double marginMm) {
    return new DeckScale(pose.mmPerPxAt(BoardPlaces.centre(board)), marginMm);
  }

  /**
   * Returns a scale with no finer detail than this one and another.
   *
   * @param leastMmPerPx mm of deck per pixel
   * @return the coarser of both, the same margin
   */
  public DeckScale noFinerThan(double leastMmPerPx) {
    return new DeckScale(Math.max(mmPerPx, leastMmPerPx), marginMm);
  }

  /** Returns the pixels that cover a length of board with both margins. */
  int pixels(double lengthMm) {
    return Math.max(1, (int) Math.ceil((lengthMm + 2 * marginMm) / mmPerPx - 1e-9));
  }
}
