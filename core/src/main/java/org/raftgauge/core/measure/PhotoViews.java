// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Optional;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.EdgeBlur;

/**
 * What boards are measured from.
 *
 * @param first the photo
 * @param second the file that the station's second camera took at the same moment
 * @param softPx how much wider the photo smears edges than sharp ones do, px
 */
record PhotoViews(RgbImage first, Optional<byte[]> second, double softPx) {
  /** Sharp photos smear edges by no more than this, px (rendered photos: 0.5 to 0.85). */
  private static final double SHARP_PX = 0.85;

  /** Returns the views with the photo's blur. */
  static PhotoViews of(RgbImage first, Optional<byte[]> second, EdgeBlur blur) {
    return new PhotoViews(first, second, Math.max(0, blur.blurPx().orElse(0) - SHARP_PX));
  }
}
