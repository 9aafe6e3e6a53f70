// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;

/**
 * Tries every place of a board of one size on a coarse map of the deck.
 *
 * @param sketch the map
 * @param above the camera that the map was drawn for
 * @param layout the board's layout
 * @param scale its apparent size over its size
 * @param lying whether the board is turned by a quarter
 */
record ScanDeck(DeckSketch sketch, CameraPose above, Layout layout, double scale, boolean lying) {
  private static final double LEAST_MEAN = 0.5;
  private static final double LEAST_SIDE = 0.2;

  /** Returns the places where enough of the board's outline is an edge. */
  List<SlotCandidate> candidates() {
    Board board = layout.board();
    double wide = scale * (lying ? board.lengthMm() : board.widthMm());
    double high = scale * (lying ? board.widthMm() : board.lengthMm());
    int w = (int) Math.round(wide / DeckSketch.CELL_MM);
    int h = (int) Math.round(high / DeckSketch.CELL_MM);
    List<SlotCandidate> found = new ArrayList<>();
    for (int y = 0; y + h < sketch.rows(); y++) {
      for (int x = 0; x + w < sketch.columns(); x++) {
        double score = score(x, y, w, h);
        if (score > LEAST_MEAN) {
          PointMm at = sketch.place(x, y);
          found.add(new SlotCandidate(layout, pose(at), score, new DeckBox(at, wide, high)));
        }
      }
    }
    return found;
  }

  private double score(int x, int y, int w, int h) {
    double left = sketch.downShare(x, y, y + h);
    double right = sketch.downShare(x + w, y, y + h);
    if (left + right < 2 * LEAST_SIDE) {
      return 0;
    }
    double top = sketch.alongShare(y, x, x + w);
    double bottom = sketch.alongShare(y + h, x, x + w);
    double least = Math.min(Math.min(left, right), Math.min(top, bottom));
    return least < LEAST_SIDE ? 0 : (left + right + top + bottom) / 4;
  }

  /** Returns the pose over a board whose upper left corner in the sketch lies at a place. */
  private CameraPose pose(PointMm at) {
    double[] r = above.rotation();
    double h = above.heightMm() / scale;
    double x = at.xMm() / scale;
    double y = at.yMm() / scale;
    if (lying) {
      // The board's x axis points up in the sketch and its y axis to the right.
      y += layout.board().widthMm();
      r = Rotations.times(r, Rotations.about(0, 0, -Math.PI / 2));
    }
    double[] a = above.rotation();
    double[] t = {a[0] * x + a[1] * y, a[3] * x + a[4] * y, h};
    return CameraPose.of(above.lens(), r, t);
  }
}
