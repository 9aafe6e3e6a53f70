// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.util.List;
import org.raftgauge.core.book.SiteId;

/** A line to write a weight on for each site, in columns, in the order of the sites. */
final class GramBlanks {
  private static final double ROW_MM = 7.5;
  private static final double COLUMN_MM = 40;
  private static final double SITE_MM = 9;
  private static final double LINE_MM = 20;
  private static final double TEXT_MM = 3.2;
  private static final String STATES = "Ring one:   whole   /   drained   /   trimmed";

  private final List<SiteId> sites;
  private final int columns;

  GramBlanks(List<SiteId> sites, double widthMm) {
    this.sites = sites;
    this.columns = Math.max(1, (int) (widthMm / COLUMN_MM));
  }

  double heightMm() {
    return (1 + Math.ceil(sites.size() / (double) columns)) * ROW_MM;
  }

  /** Draws them below and right of a place, along the rows. */
  void draw(PdfPage page, double leftMm, double topMm) throws IOException {
    for (int i = 0; i < sites.size(); i++) {
      double x = leftMm + i % columns * COLUMN_MM;
      double y = topMm + Math.floorDiv(i, columns) * ROW_MM + 3.5;
      page.text(sites.get(i).toString(), x, y, TEXT_MM);
      page.line(x + SITE_MM, y + 0.6, x + SITE_MM + LINE_MM, y + 0.6);
      page.text("g", x + SITE_MM + LINE_MM + 1, y, TEXT_MM);
    }
    page.text(STATES, leftMm, topMm + heightMm() - ROW_MM + 3.5, TEXT_MM);
  }
}
