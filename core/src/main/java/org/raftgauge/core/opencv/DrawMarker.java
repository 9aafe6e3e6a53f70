// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import org.opencv.core.Mat;
import org.opencv.objdetect.Dictionary;
import org.opencv.objdetect.Objdetect;

/** Draws AprilTag 36h11 markers from the dictionary of OpenCV 4.9. */
public final class DrawMarker {
  private static final int CELLS = 8;
  private static final int MOST = 586;

  private DrawMarker() {}

  /**
   * Draws a marker, one pixel a cell.
   *
   * @param id its number, 0 to 586
   * @return 8 x 8 grey levels, row by row, with the black border
   */
  public static byte[] cells(int id) {
    if (id < 0 || id > MOST) {
      throw new IllegalArgumentException("id must be in 0..586, got " + id);
    }
    try (MatScope scope = new MatScope()) {
      Dictionary family =
          scope.keep(Objdetect.getPredefinedDictionary(Objdetect.DICT_APRILTAG_36h11));
      Mat drawn = scope.mat();
      family.generateImageMarker(id, CELLS, drawn, 1);
      return MatScope.bytes(drawn);
    }
  }
}
