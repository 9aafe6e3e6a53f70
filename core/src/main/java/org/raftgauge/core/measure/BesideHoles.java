// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Tells a board whose plants stand beside its planting holes: each site then has a share of another
 * plant. So it looks where a camera over a pond was turned, or its pictures are mirrored, and rows
 * are staggered; or where the layout is not the board's.
 */
final class BesideHoles {
  /**
   * Where the middle of the median plant may lie in staggered rows, in pitches.
   *
   * <p>Measured: of 729 rendered boards, leaning and overlapping rocket among them, the farthest
   * was at 0.09; young plants of turned and mirrored pictures lay at 0.14 to 0.36, and only where
   * leaves close over the board some came down to 0.10.
   */
  private static final double STAGGERED_PITCHES = 0.125;

  /**
   * The same in straight rows, where a turned picture lays plants on other holes, not beside them:
   * past this a layout is so far off that neighbours' leaf counts (a working value).
   */
  private static final double STRAIGHT_PITCHES = 0.25;

  /** Plants lean so far whatever the pitch, mm (a working value). */
  private static final double LEANING_MM = 15;

  /** Of fewer plants one that leans would decide. */
  private static final int LEAST_PLANTS = 5;

  private BesideHoles() {}

  /** Says whether the median plant of a board stands beside its hole. */
  static boolean stand(List<SiteMeasure> sites, SiteGrid grid) {
    double[] off =
        sites.stream()
            .flatMap(site -> site.shape().stream())
            .mapToDouble(shape -> Math.hypot(shape.offsetXMm(), shape.offsetYMm()))
            .sorted()
            .toArray();
    double pitch = Math.min(grid.pitchXMm(), grid.pitchYMm());
    double most = grid.staggerXMm() == 0 ? STRAIGHT_PITCHES : STAGGERED_PITCHES;
    return off.length >= LEAST_PLANTS
        && off[(off.length - 1) / 2] > Math.max(LEANING_MM, most * pitch);
  }
}
