// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import org.opencv.core.Mat;
import org.opencv.objdetect.Objdetect;

/** Draws the cells of AprilTag 36h11 markers for tests. */
public final class MarkerCells {

  private MarkerCells() {}

  /** Returns whether each of a marker's 8 x 8 cells is white, row by row. */
  public static boolean[][] of(int id) {
    try (MatScope scope = new MatScope()) {
      Mat cells = scope.mat();
      Objdetect.generateImageMarker(
          Objdetect.getPredefinedDictionary(Objdetect.DICT_APRILTAG_36h11), id, 8, cells, 1);
      byte[] values = MatScope.bytes(cells);
      boolean[][] white = new boolean[8][8];
      for (int i = 0; i < 64; i++) {
        white[i / 8][i % 8] = values[i] != 0;
      }
      return white;
    }
  }
}
