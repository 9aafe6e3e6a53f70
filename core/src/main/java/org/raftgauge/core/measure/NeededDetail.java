// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Collection;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Station;

/**
 * In how fine detail a board has to be seen for its sites to be measured: finer photos are averaged
 * to that before anything is looked for, and deck pictures are drawn no finer.
 *
 * <p>What finer detail would add to the areas is on the page of speeds, which is written by the
 * command that measures it.
 */
final class NeededDetail {
  /** Coarsest detail, mm of deck a pixel: stems and the tips of leaves are some mm wide. */
  private static final double MOST_MM = 0.7;

  /**
   * Least number of pixels from site to site: cells of a tray are seen as finely as they can be.
   */
  private static final double PX_A_PITCH = 200;

  /** A marker has eight cells; three pixels a cell are found and placed surely. */
  private static final double PX_A_MARKER = 24;

  private NeededDetail() {}

  /**
   * Returns the detail that a layout needs.
   *
   * @param layout the layout
   * @return mm of deck a pixel, above 0
   */
  static double mmPerPx(Layout layout) {
    SiteGrid grid = layout.grid();
    double pitch = Math.min(grid.pitchXMm(), grid.pitchYMm()) / PX_A_PITCH;
    double marker = layout.markers().map(m -> m.sideMm() / PX_A_MARKER).orElse(MOST_MM);
    return Math.min(MOST_MM, Math.min(pitch, marker));
  }

  /**
   * Returns how many pixels of a station's photo, each way, may be averaged to one.
   *
   * @param station the station
   * @param layouts that its boards may have
   * @param widthPx width of the photo
   * @return 1 or more
   */
  static int parts(Station station, Collection<Layout> layouts, int widthPx) {
    double needed = layouts.stream().mapToDouble(NeededDetail::mmPerPx).min().orElse(0);
    double focalPx = station.lens().fxPx() * widthPx / station.imageWidthPx();
    return Math.max(1, (int) (needed / (station.cameraHeightMm() / focalPx)));
  }
}
