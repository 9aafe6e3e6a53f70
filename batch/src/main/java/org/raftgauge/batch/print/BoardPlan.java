// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;

/**
 * A board from above with a box to tick at each site that is meant, the others as dots, crosses
 * where nothing is planted; where none is named every planted site has a box. The black corner at
 * the top left is A1's; row letters and column numbers stand round it.
 */
final class BoardPlan {
  private static final double EDGE_MM = 5;

  /** Distance between sites that leaves room to tick, and the room there is. */
  private static final double PITCH_MM = 9;

  private static final double LARGEST_MM = 75;
  private static final double LETTERS_MM = 2.4;

  /** Side of the mark in A1's corner. */
  private static final double CORNER_MM = 3;

  private final Layout layout;
  private final Set<SiteId> planted;
  private final Set<SiteId> meant;
  private final double scale;
  private final double boxMm;

  BoardPlan(PrintWorklist.Board board, List<SiteId> sites) {
    this.layout = board.layout();
    this.planted = board.planted();
    this.meant = new TreeSet<>(sites.isEmpty() ? planted : sites);
    SiteGrid grid = layout.grid();
    double pitch = Math.min(grid.pitchXMm(), grid.pitchYMm());
    double room =
        Math.min(LARGEST_MM / layout.board().widthMm(), LARGEST_MM / layout.board().lengthMm());
    this.scale = Math.min(PITCH_MM / pitch, room);
    this.boxMm = Math.min(4, 0.5 * pitch * scale);
  }

  double widthMm() {
    return layout.board().widthMm() * scale + EDGE_MM;
  }

  double heightMm() {
    return layout.board().lengthMm() * scale + EDGE_MM;
  }

  void draw(PdfPage page, double leftMm, double topMm) throws IOException {
    double x = leftMm + EDGE_MM;
    double y = topMm + EDGE_MM;
    page.outline(new PdfPage.Box(x, y, widthMm() - EDGE_MM, heightMm() - EDGE_MM), 0.25, 0.3);
    page.corner(x, y, CORNER_MM);
    letters(page, x, y);
    for (SiteId site : layout.grid().sites()) {
      PointMm at = layout.grid().centre(site);
      double cx = x + at.xMm() * scale;
      double cy = y + at.yMm() * scale;
      if (meant.contains(site)) {
        page.outline(new PdfPage.Box(cx - boxMm / 2, cy - boxMm / 2, boxMm, boxMm), 0.35, 0);
      } else {
        dot(page, site, cx, cy);
      }
    }
  }

  private void dot(PdfPage page, SiteId site, double x, double y) throws IOException {
    double half = Math.min(0.9, boxMm / 3);
    if (planted.contains(site)) {
      page.disc(x, y, half, 0);
    } else {
      page.line(x - half, y - half, x + half, y + half);
      page.line(x - half, y + half, x + half, y - half);
    }
  }

  private void letters(PdfPage page, double x, double y) throws IOException {
    SiteGrid grid = layout.grid();
    int everyColumn = every(grid.pitchXMm());
    for (int column = 0; column < grid.columns(); column += everyColumn) {
      String number = String.valueOf(column + 1);
      double at = x + grid.centre(new SiteId(0, column)).xMm() * scale;
      page.text(number, at - page.widthMm(number, LETTERS_MM) / 2, y - 1.2, LETTERS_MM);
    }
    int everyRow = every(grid.pitchYMm());
    for (int row = 0; row < grid.rows(); row += everyRow) {
      String letter = new SiteId(row, 0).toString().replaceAll("\\d", "");
      double at = y + grid.centre(new SiteId(row, 0)).yMm() * scale;
      page.text(letter, x - 1.2 - page.widthMm(letter, LETTERS_MM), at + 0.9, LETTERS_MM);
    }
  }

  /** Returns which of the heads there is room for: each, every second, ... */
  private int every(double pitchMm) {
    return Math.max(1, (int) Math.ceil(1.6 * LETTERS_MM / (pitchMm * scale)));
  }
}
