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
  /** Coarsest detail, mm of deck a pixel: seedlings lose 2 % at 0.7 mm. */
  private static final double MOST_MM = 0.5;

  /**
   * Least number of pixels from site to site: cells of a tray are seen as finely as they can be.
   */
  private static final double PX_A_PITCH = 200;

  /**
   * Detail in which large plants are measured as well, mm: at 1 mm instead of half of it late
   * butterhead gains 0.3 % (rendered, 12 megapixels).
   */
  private static final double FIRST_LOOK_MM = 1;

  /** A tag's modules, 25 and more, want three pixels each. */
  private static final double PX_A_TAG = 80;

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

  /** Returns the detail of a first look, which serves boards of large plants. */
  private static double firstLookMmPerPx(Layout layout) {
    if (layout.grid().close()) {
      return mmPerPx(layout);
    }
    double marker = layout.markers().map(m -> m.sideMm() / PX_A_MARKER).orElse(FIRST_LOOK_MM);
    double tag = layout.tag().map(t -> t.sideMm() / PX_A_TAG).orElse(FIRST_LOOK_MM);
    // One mark is enough to find a board by; a small tag is read in all pixels afterwards.
    double mark = layout.markers().isPresent() ? marker : tag;
    return Math.max(mmPerPx(layout), Math.min(FIRST_LOOK_MM, mark));
  }

  /**
   * Returns how many pixels of a station's photo, each way, may be averaged to one for a first
   * look; {@link CloserLook} says whether it is enough.
   *
   * @param station the station
   * @param layouts that its boards may have
   * @param widthPx width of the photo
   * @return 1 or more
   */
  static int firstLookParts(Station station, Collection<Layout> layouts, int widthPx) {
    double needed = layouts.stream().mapToDouble(NeededDetail::firstLookMmPerPx).min().orElse(0);
    return parts(station, needed, widthPx);
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
    return parts(
        station, layouts.stream().mapToDouble(NeededDetail::mmPerPx).min().orElse(0), widthPx);
  }

  private static int parts(Station station, double needed, int widthPx) {
    double focalPx = station.lens().fxPx() * widthPx / station.imageWidthPx();
    return Math.max(1, (int) (needed / (station.cameraHeightMm() / focalPx)));
  }
}
