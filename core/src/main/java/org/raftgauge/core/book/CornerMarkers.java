// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * The AprilTag 36h11 markers 0, 1, 2, 3 at a board's corners, clockwise from the origin corner seen
 * from above.
 *
 * @param sideMm outer edge of the black square, mm, above 0
 * @param centresMm the four centres, by id
 */
public record CornerMarkers(double sideMm, List<PointMm> centresMm) {

  /** Checks that there are four centres and the side is above 0. */
  public CornerMarkers {
    centresMm = List.copyOf(centresMm);
    if (!(sideMm > 0) || centresMm.size() != 4) {
      throw new IllegalArgumentException(
          "markers must have a side > 0 mm and four centres, got "
              + sideMm
              + " and "
              + centresMm.size());
    }
  }
}
