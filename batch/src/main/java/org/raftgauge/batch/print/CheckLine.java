// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;

/**
 * The foot of every printed page: a ruler and a line of known length, to see at once whether the
 * printer kept the scale.
 */
final class CheckLine {
  /** Length of the check line, mm; 1 % of it is 1.5 mm, three times what a rule is read to. */
  static final double LENGTH_MM = 150;

  /** Height that the foot takes, mm. */
  static final double FOOT_MM = 19;

  private static final int RULER_MM = 150;
  private static final double TEXT_MM = 2.6;

  private CheckLine() {}

  /** Draws the foot at the lower edge of a page. */
  static void draw(PdfPage page, double leftMm, double pageHeightMm) throws IOException {
    double line = pageHeightMm - 15;
    page.fill(new PdfPage.Box(leftMm, line - 0.25, LENGTH_MM, 0.5), 0);
    page.fill(new PdfPage.Box(leftMm - 0.25, line - 1.5, 0.25, 3), 0);
    page.fill(new PdfPage.Box(leftMm + LENGTH_MM, line - 1.5, 0.25, 3), 0);
    page.text(
        "Check: between the end strokes 150.0 mm. Over 0.5 mm off: print again at 100 %"
            + " (\"actual size\").",
        leftMm, line - 2.2, TEXT_MM);
    double ruler = pageHeightMm - 11.5;
    for (int mm = 0; mm <= RULER_MM; mm++) {
      double length = mm % 10 == 0 ? 4 : mm % 5 == 0 ? 3 : 1.8;
      page.fill(new PdfPage.Box(leftMm + mm - 0.05, ruler, 0.1, length), 0);
      if (mm % 10 == 0) {
        String text = Integer.toString(mm);
        page.text(text, leftMm + mm - page.widthMm(text, 2.2) / 2, ruler + 6.2, 2.2);
      }
    }
  }
}
