// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * A corner marker seen in a photo.
 *
 * @param id its number in the family
 * @param cornersPx the corners of its black square, clockwise from the marker's own top left
 * @param cornerErrorPx standard error of a corner along x or y, px, above 0
 */
public record MarkerSighting(int id, List<PointPx> cornersPx, double cornerErrorPx) {

  /** Checks that there are four corners and the error is above 0. */
  public MarkerSighting {
    cornersPx = List.copyOf(cornersPx);
    if (cornersPx.size() != 4 || !(cornerErrorPx > 0)) {
      throw new IllegalArgumentException(
          "a sighting has four corners and an error > 0 px, got "
              + cornersPx.size()
              + ", "
              + cornerErrorPx);
    }
  }

  /** Returns the mean of its corners. */
  public PointPx centrePx() {
    return Quads.centre(cornersPx);
  }

  /** Returns the mean length of its sides, px. */
  public double sidePx() {
    return Quads.meanSidePx(cornersPx);
  }
}
