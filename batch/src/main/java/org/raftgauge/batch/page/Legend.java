// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;

/** Explains the marks of an overlay, on one line. */
final class Legend {
  private final Ink ink;
  private final Font font;
  private final double y;
  private double x;

  private Legend(Ink ink, Font font, Point2D start) {
    this.ink = ink;
    this.font = font;
    this.x = start.getX();
    this.y = start.getY();
  }

  /**
   * Draws the legend.
   *
   * @param ink what to draw with
   * @param font of the texts
   * @param start left end of its base line
   */
  static void draw(Ink ink, Font font, Point2D start) {
    Legend legend = new Legend(ink, font, start);
    legend.siteSample();
    legend.text("site, cm\u00b2 (~ touching)");
    legend.ink.brokenLine(legend.sample(), Palette.YELLOW);
    legend.text("closed: at least");
    legend.ink.brokenLine(legend.sample(), Palette.PAPER);
    legend.text("? held");
    double r = 0.4 * font.getSize2D();
    legend.ink.line(
        new Ellipse2D.Double(legend.x + r, legend.middle() - r, 2 * r, 2 * r), Palette.PAPER);
    legend.text("empty");
    legend.ink.cross(new Point2D.Double(legend.x + r, legend.middle()), 0.7 * r);
    legend.text("not planted");
    legend.ink.hatch(
        new Rectangle2D.Double(legend.x, legend.middle() - r, 2 * font.getSize2D(), 2 * r));
    legend.text("leaf of no site");
    legend.ink.fill(
        new Rectangle2D.Double(legend.x + r, legend.middle() - 0.6 * r, 1.2 * r, 1.2 * r),
        Palette.PAPER);
    legend.text("A1 corner");
  }

  /** Draws a line in the four colours of sites, which only tell neighbours apart. */
  private void siteSample() {
    double part = 0.5 * font.getSize2D();
    for (int k = 0; k < 4; k++) {
      double from = x + k * part;
      ink.line(
          new Line2D.Double(from, middle(), from + part, middle()),
          Palette.site(Math.floorDiv(k, 2), k % 2));
    }
  }

  private double middle() {
    return y - 0.35 * font.getSize2D();
  }

  private Line2D sample() {
    return new Line2D.Double(x, middle(), x + 2 * font.getSize2D(), middle());
  }

  private void text(String text) {
    double from = x + 2.5 * font.getSize2D();
    ink.plainText(text, new Point2D.Double(from, y), font);
    x = from + ink.widthPx(text, font) + 1.5 * font.getSize2D();
  }
}
