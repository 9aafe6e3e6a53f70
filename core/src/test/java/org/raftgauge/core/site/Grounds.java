// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Collections;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.plane.DrawnDeck;

/** Boards for tests of sites: one row of sites, the camera over the board's middle. */
final class Grounds {
  static final HeightModel FLAT = new HeightModel(0, 0, 0.5);
  static final double CAMERA_MM = 1600;

  private Grounds() {}

  /**
   * Returns a board of {@code width} x {@code height} pixels of a scale with flat plants; a site
   * every {@code pitchPx} from half of it on, in the middle of the picture's height.
   */
  static Ground row(int width, int height, double pitchPx, double mmPerPx) {
    return row(width, height, new double[] {pitchPx, mmPerPx}, FLAT, 0);
  }

  /** Returns the same with plants of a height model and a pose error. */
  static Ground row(
      int width, int height, double[] pitchAndScale, HeightModel model, double poseErrorMm) {
    double mm = pitchAndScale[1];
    double pitch = pitchAndScale[0] * mm;
    int columns = (int) Math.round(width * mm / pitch);
    SiteGrid grid = new SiteGrid(1, columns, pitch / 2, height * mm / 2, pitch, pitch, 0);
    Board board = new Board(width * mm, height * mm);
    return new Ground(
        DrawnDeck.blank(width, height, mm),
        DrawnDeck.layout(board, grid),
        DrawnDeck.above(width * mm / 2, height * mm / 2, CAMERA_MM),
        poseErrorMm,
        Collections.nCopies(columns, model),
        Collections.nCopies(columns, 0.35));
  }
}
