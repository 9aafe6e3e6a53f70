// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.List;
import org.raftgauge.core.pixels.PointPx;

/**
 * A QR code seen in a photo.
 *
 * @param text what it says
 * @param cornersPx its corners without the quiet zone, clockwise from its own top left; the third
 *     (bottom right) is the least sure, as there is no finder pattern there
 * @param cornerErrorPx standard error of the first, second and fourth corner along x or y, px
 * @param modulePx mean size of a module in the photo, px, above 0
 * @param unusable why the text can be no raft's id; empty where it can
 * @param mirrored whether it reads only as in a mirror: the photo is mirrored, or the print is
 */
public record TagSighting(
    String text,
    List<PointPx> cornersPx,
    double cornerErrorPx,
    double modulePx,
    String unusable,
    boolean mirrored) {

  /** Checks that there are four corners and the sizes are above 0. */
  public TagSighting {
    cornersPx = List.copyOf(cornersPx);
    if (cornersPx.size() != 4 || !(cornerErrorPx > 0) || !(modulePx > 0)) {
      throw new IllegalArgumentException(
          "a sighting has four corners, an error and a module > 0 px, got "
              + cornersPx.size()
              + ", "
              + cornerErrorPx
              + ", "
              + modulePx);
    }
  }

  /** Says whether the text can be a raft's id. */
  public boolean usable() {
    return unusable.isEmpty();
  }

  /** Returns the mean of its corners. */
  public PointPx centrePx() {
    return Quads.centre(cornersPx);
  }
}
