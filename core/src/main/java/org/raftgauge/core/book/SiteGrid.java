// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.List;

/**
 * The planting holes of a board.
 *
 * @param rows number of rows, 1 or more
 * @param columns number of columns, 1 or more
 * @param firstXMm x of A1, mm
 * @param firstYMm y of A1, mm
 * @param pitchXMm distance between columns, mm, above 0
 * @param pitchYMm distance between rows, mm, above 0
 * @param staggerXMm shift of every second row (B, D, ...) along x, mm
 */
public record SiteGrid(
    int rows,
    int columns,
    double firstXMm,
    double firstYMm,
    double pitchXMm,
    double pitchYMm,
    double staggerXMm) {

  private static final double USUAL_HOLE_MM = 50;

  /** Checks the numbers of sites and the pitches. */
  public SiteGrid {
    if (rows < 1 || columns < 1 || !(pitchXMm > 0) || !(pitchYMm > 0)) {
      throw new IllegalArgumentException(
          "grid must have >= 1 row and column and pitches > 0, got "
              + rows
              + " x "
              + columns
              + ", "
              + pitchXMm
              + " x "
              + pitchYMm
              + " mm");
    }
  }

  /**
   * Returns the diameter taken for a planting hole, mm: the usual 50 mm net cup, less where sites
   * are close (common practice, no source).
   */
  public double holeMm() {
    return Math.min(USUAL_HOLE_MM, 0.45 * Math.min(pitchXMm, pitchYMm));
  }

  /** Says whether sites are so close that a hole must be smaller than usual: cells of a tray. */
  public boolean close() {
    return holeMm() < USUAL_HOLE_MM;
  }

  /** Returns every site, row by row. */
  public List<SiteId> sites() {
    List<SiteId> sites = new ArrayList<>(rows * columns);
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        sites.add(new SiteId(row, column));
      }
    }
    return sites;
  }

  /**
   * Says whether the grid has a site.
   *
   * @param site the site
   * @return true if it is on the grid
   */
  public boolean has(SiteId site) {
    return site.row() < rows && site.column() < columns;
  }

  /**
   * Returns the centre of a site's hole.
   *
   * @param site a site of this grid
   * @return its centre on the deck plane
   */
  public PointMm centre(SiteId site) {
    double shift = site.row() % 2 == 1 ? staggerXMm : 0;
    return new PointMm(
        firstXMm + shift + site.column() * pitchXMm, firstYMm + site.row() * pitchYMm);
  }
}
