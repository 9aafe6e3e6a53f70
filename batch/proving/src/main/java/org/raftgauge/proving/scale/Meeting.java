// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.BorderTakes;
import org.raftgauge.core.site.SiteMeasure;

/** Borders between invented plants that fill half of their cells and more. */
final class Meeting {
  /** Share of the smaller plant that changes hands at each step. */
  private static final double A_STEP = 0.04;

  private Meeting() {}

  /** Returns the borders of a board's plants with those to the right of them and below them. */
  static List<Border> borders(SiteGrid grid, List<SiteMeasure> sites, double cellCm2) {
    List<Border> borders = new ArrayList<>();
    for (int i = 0; i < sites.size(); i++) {
      SiteId site = sites.get(i).site();
      if (site.column() + 1 < grid.columns()) {
        meet(sites.get(i), sites.get(i + 1), cellCm2, borders);
      }
      if (site.row() + 1 < grid.rows()) {
        meet(sites.get(i), sites.get(i + grid.columns()), cellCm2, borders);
      }
    }
    return Collections.unmodifiableList(borders);
  }

  private static void meet(SiteMeasure a, SiteMeasure b, double cellCm2, List<Border> borders) {
    double least = Math.min(areaCm2(a), areaCm2(b));
    if (least >= cellCm2 / 2) {
      double step = A_STEP * least;
      BorderTakes taken = BorderTakes.ofCm2(step, 2 * step, 3 * step, 4 * step, 5 * step);
      double lnRatio = Math.log(areaCm2(a) / areaCm2(b)) / 2;
      borders.add(new Border(a.site(), b.site(), lnRatio, taken, taken));
    }
  }

  private static double areaCm2(SiteMeasure site) {
    return site.projectedAreaCm2().orElseThrow();
  }
}
