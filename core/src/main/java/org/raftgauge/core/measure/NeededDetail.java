// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Collection;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Station;

/**
 * In how fine detail a board has to be seen for its sites to be measured: finer photos are averaged
 * before anything is looked for, and deck pictures are drawn no finer.
 */
final class NeededDetail {
  /**
   * Coarsest detail of a deck picture, mm a pixel (working value). Edges are mixtures, so that
   * plants of 1 to 5 cm2 err by 2 to 3 % at 0.5 and at 0.9 mm alike (rendered, seed 660451), all
   * open ones by 1.3 % at 0.7 and 1.4 % at 0.85 mm (path-traced photos, another renderer's).
   */
  private static final double DECK_MM = 0.85;

  /** Coarsest detail to which a photo is averaged, mm of deck a pixel. */
  private static final double PHOTO_MM = 1;

  /** Least number of pixels from site to site where sites are close: cells of a tray. */
  private static final double PX_A_PITCH = 200;

  /** A tag's modules, 25 and more, want three pixels each. */
  private static final double PX_A_TAG = 80;

  /** A marker has eight cells; three pixels a cell are found and placed surely. */
  private static final double PX_A_MARKER = 24;

  private NeededDetail() {}

  /**
   * Returns the detail in which a deck picture is drawn where the photo has it.
   *
   * @param layout the board's layout
   * @return mm of deck a pixel, above 0
   */
  static double deckMmPerPx(Layout layout) {
    return cells(layout, DECK_MM);
  }

  /** Returns the detail that finding a board and measuring its sites need of the photo. */
  private static double photoMmPerPx(Layout layout) {
    double marker = layout.markers().map(m -> m.sideMm() / PX_A_MARKER).orElse(PHOTO_MM);
    double tag = layout.tag().map(t -> t.sideMm() / PX_A_TAG).orElse(PHOTO_MM);
    // One mark is enough to find a board by; a small tag is read in all pixels afterwards.
    double mark = layout.markers().isPresent() ? marker : tag;
    return Math.min(cells(layout, PHOTO_MM), mark);
  }

  private static double cells(Layout layout, double mm) {
    SiteGrid grid = layout.grid();
    return grid.close() ? Math.min(grid.pitchXMm(), grid.pitchYMm()) / PX_A_PITCH : mm;
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
    double needed = layouts.stream().mapToDouble(NeededDetail::photoMmPerPx).min().orElse(0);
    double focalPx = station.lens().fxPx() * widthPx / station.imageWidthPx();
    return Math.max(1, (int) (needed / (station.cameraHeightMm() / focalPx)));
  }
}
