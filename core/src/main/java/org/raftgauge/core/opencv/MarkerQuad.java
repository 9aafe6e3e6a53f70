// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * A square marker as the detector saw it.
 *
 * @param id its number in the family
 * @param cornersPx its four corners in photo px, clockwise from the marker's own top left
 */
public record MarkerQuad(int id, List<PointPx> cornersPx) {

  /** Copies the corners. */
  public MarkerQuad {
    cornersPx = List.copyOf(cornersPx);
    if (cornersPx.size() != 4) {
      throw new IllegalArgumentException("a marker has four corners, got " + cornersPx.size());
    }
  }
}
