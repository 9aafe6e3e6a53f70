// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * A known place of the deck seen in the photo.
 *
 * @param deck the place
 * @param photo where it was seen
 * @param errorPx standard error of that along x or y, px, above 0
 */
record Tie(PointMm deck, PointPx photo, double errorPx) {

  /** Returns how far a pose puts the deck place from where it was seen, px. */
  double missPx(CameraPose pose) {
    return pose.toPhoto(deck).distancePx(photo);
  }
}
