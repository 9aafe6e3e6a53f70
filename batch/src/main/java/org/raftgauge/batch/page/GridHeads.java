// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Font;
import java.awt.geom.Point2D;
import java.util.List;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Writes row letters and column numbers along a board with many sites, where a name at each site
 * would hide its plant.
 */
final class GridHeads {
  /** Distance of a head from its first site, in distances of sites. */
  private static final double OUT = 0.65;

  private GridHeads() {}

  /** Says whether a board has rows and columns to write heads for. */
  static boolean fit(Sheet sheet) {
    List<SiteMeasure> sites = sheet.raft().sites();
    return sites.stream().anyMatch(s -> s.site().row() > 0)
        && sites.stream().anyMatch(s -> s.site().column() > 0);
  }

  /** Writes the heads of a board that {@link #fit}. */
  static void write(Sheet sheet, Scale scale, Ink ink, Font font) {
    List<SiteMeasure> sites = sheet.raft().sites();
    List<Point2D.Double> at = sheet.drawing().siteCentresPx().stream().map(scale::at).toList();
    Point2D.Double first = at.get(0);
    Point2D.Double right = at.get(indexOf(sites, 0, 1));
    Point2D.Double below = at.get(indexOf(sites, 1, 0));
    for (int i = 0; i < sites.size(); i++) {
      SiteId site = sites.get(i).site();
      if (site.column() == 0) {
        ink.text(site.toString().replaceAll("\\d", ""), out(at.get(i), first, right), font);
      }
      if (site.row() == 0) {
        ink.text(site.toString().replaceAll("\\D", ""), out(at.get(i), first, below), font);
      }
    }
  }

  private static int indexOf(List<SiteMeasure> sites, int row, int column) {
    for (int i = 0; i < sites.size(); i++) {
      SiteId site = sites.get(i).site();
      if (site.row() == row && site.column() == column) {
        return i;
      }
    }
    return 0;
  }

  private static Point2D.Double out(
      Point2D.Double from, Point2D.Double first, Point2D.Double next) {
    return new Point2D.Double(from.x - OUT * (next.x - first.x), from.y - OUT * (next.y - first.y));
  }
}
