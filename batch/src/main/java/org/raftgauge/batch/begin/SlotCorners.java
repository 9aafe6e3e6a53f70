// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.begin;

import java.util.ArrayList;
import java.util.List;

/** Where one board under the middle of a plumb camera is seen. */
final class SlotCorners {

  private SlotCorners() {}

  /**
   * Words the corners clockwise from the one nearest A1, px; the board is laid along the photo's
   * longer side and kept inside it.
   */
  static String text(Beginning.Holes board, Beginning.Camera camera) {
    double scale = camera.focalPx() / camera.heightMm();
    boolean across = (board.lengthMm() > board.widthMm()) != (camera.heightPx() > camera.widthPx());
    double wide = across ? board.lengthMm() : board.widthMm();
    double high = across ? board.widthMm() : board.lengthMm();
    double fit = Math.min(0.96 * camera.widthPx() / wide, 0.96 * camera.heightPx() / high);
    double px = Math.min(scale, fit);
    long left = Math.round((camera.widthPx() - wide * px) / 2);
    long top = Math.round((camera.heightPx() - high * px) / 2);
    long right = Math.round(left + wide * px);
    long bottom = Math.round(top + high * px);
    List<String> corners =
        new ArrayList<>(
            List.of(
                "[" + left + ", " + top + "]",
                "[" + right + ", " + top + "]",
                "[" + right + ", " + bottom + "]",
                "[" + left + ", " + bottom + "]"));
    if (across) {
      // Laid on its side, A1 at the top right.
      corners.add(corners.remove(0));
    }
    return "[" + String.join(", ", corners) + "]";
  }
}
