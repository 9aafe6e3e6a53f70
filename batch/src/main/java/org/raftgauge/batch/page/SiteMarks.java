// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.core.site.SiteMeasure;

/** Draws a raft's sites: outlines first, then names and areas on top of all outlines. */
final class SiteMarks {
  /** A board with more sites is a tray: its sites are named at the board's edge alone. */
  static final int TRAY = 40;

  /** Lowest end of a site's text, in distances of sites; the next plant may begin at half. */
  private static final double FARTHEST = 0.62;

  private final Ink ink;
  private final Scale scale;
  private final Font font;
  private final double pitchPx;
  private final boolean tray;

  /**
   * Prepares to draw.
   *
   * @param ink what to draw with
   * @param scale of the photo
   * @param pitchPx smallest distance between sites, photo px
   * @param mostSites number of sites of the board that has most
   */
  SiteMarks(Ink ink, Scale scale, double pitchPx, int mostSites) {
    this.ink = ink;
    this.scale = scale;
    this.pitchPx = pitchPx * scale.factor();
    this.tray = mostSites > TRAY;
    float size = fontPx(this.pitchPx, tray ? 0.27 : 0.19);
    this.font = new Font(Font.SANS_SERIF, Font.BOLD, 1).deriveFont(size);
  }

  /**
   * Text grows with the distance of sites, faster where they lie close: readable at arm's length on
   * a screen that shows the whole board.
   */
  static float fontPx(double pitchPx, double closeShare) {
    double close = Math.min(closeShare * pitchPx, 26);
    return (float) Math.max(9, Math.min(Math.max(0.15 * pitchPx, close), 38));
  }

  /** Draws the outlines of a raft's sites. */
  void outlines(Sheet sheet, Map<Integer, Path2D> outlines) {
    for (int i = 0; i < sheet.raft().sites().size(); i++) {
      SiteMeasure site = sheet.raft().sites().get(i);
      Point2D.Double hole = scale.at(sheet.drawing().siteCentresPx().get(i));
      boolean planted = sheet.planted().contains(site.site());
      boolean drawn = !bare(site) && isDrawn(outlines, sheet.owner(i));
      if (drawn) {
        outline(site, outlines.get(sheet.owner(i)));
      } else if (planted && site.held().isEmpty()) {
        ring(hole, bare(site) ? Palette.PAPER : colour(site));
      } else if (!planted) {
        cross(hole);
      }
    }
  }

  private void outline(SiteMeasure site, Path2D outline) {
    Color colour = colour(site);
    if (!site.held().isEmpty()) {
      ink.brokenLine(outline, Palette.PAPER);
    } else if (site.closed()) {
      ink.brokenLine(outline, colour);
    } else {
      ink.outline(outline, colour);
    }
  }

  private static Color colour(SiteMeasure site) {
    return Palette.site(site.site().row(), site.site().column());
  }

  /** Says whether a site's canopy is more than specks too small to draw. */
  private static boolean isDrawn(Map<Integer, Path2D> outlines, int owner) {
    return outlines.containsKey(owner) && !outlines.get(owner).getBounds2D().isEmpty();
  }

  private static boolean bare(SiteMeasure site) {
    return site.held().isEmpty() && site.projectedAreaCm2().orElse(1) == 0;
  }

  /** Marks a hole that the book says is not planted. */
  private void cross(Point2D middle) {
    ink.cross(middle, 0.07 * pitchPx);
  }

  private void ring(Point2D middle, Color colour) {
    double radius = 0.11 * pitchPx;
    ink.line(
        new Ellipse2D.Double(
            middle.getX() - radius, middle.getY() - radius, 2 * radius, 2 * radius),
        colour);
  }

  /** Writes the names and areas of a raft's planted sites, and the names of plants elsewhere. */
  void names(Sheet sheet, Map<Integer, Path2D> outlines) {
    boolean close = tray && GridHeads.fit(sheet);
    if (close) {
      GridHeads.write(sheet, scale, ink, font);
    }
    for (int i = 0; i < sheet.raft().sites().size(); i++) {
      SiteMeasure site = sheet.raft().sites().get(i);
      boolean planted = sheet.planted().contains(site.site());
      if (close && planted) {
        ink.text(area(site), closeMiddle(site, sheet, i), font);
      } else if (!close && (planted || isDrawn(outlines, sheet.owner(i)))) {
        Point2D middle = middle(site, sheet, i, outlines);
        double half = 0.6 * font.getSize2D();
        ink.text(
            site.site().toString(), new Point2D.Double(middle.getX(), middle.getY() - half), font);
        ink.text(
            planted ? area(site) : "not planted",
            new Point2D.Double(middle.getX(), middle.getY() + half),
            planted ? font : font.deriveFont(0.6f * font.getSize2D()));
      }
    }
  }

  /** Where sites lie close a single line stands low between a site and the next. */
  private Point2D closeMiddle(SiteMeasure site, Sheet sheet, int i) {
    Point2D.Double at = scale.at(sheet.drawing().plantCentresPx().get(i));
    boolean large = radiusPx(site, sheet) > 0.35 * pitchPx;
    return large ? at : new Point2D.Double(at.x, at.y + 0.5 * pitchPx - 0.55 * font.getSize2D());
  }

  /**
   * On a large plant the text stands on its middle; under the lowest leaf of a small one, so as not
   * to hide it, but not much past half the way to the next site.
   */
  private Point2D middle(SiteMeasure site, Sheet sheet, int i, Map<Integer, Path2D> outlines) {
    Point2D.Double at = scale.at(sheet.drawing().plantCentresPx().get(i));
    if (radiusPx(site, sheet) >= 0.27 * pitchPx) {
      return at;
    }
    double lowest =
        isDrawn(outlines, sheet.owner(i))
            ? outlines.get(sheet.owner(i)).getBounds2D().getMaxY() - at.y
            : 0.11 * pitchPx;
    double half = 1.25 * font.getSize2D();
    double below = Math.min(Math.max(lowest, 0.14 * pitchPx) + half, FARTHEST * pitchPx - half);
    return new Point2D.Double(at.x, at.y + below);
  }

  private double radiusPx(SiteMeasure site, Sheet sheet) {
    return site.shape().stream()
        .mapToDouble(s -> s.equivalentDiameterMm() / 2 / sheet.raft().mmPerPx())
        .map(photoPx -> photoPx * scale.factor())
        .findFirst()
        .orElse(site.held().isEmpty() ? 0.11 * pitchPx : pitchPx);
  }

  /**
   * Writes an area to about three digits; a closed site's is a lower bound, that of a plant which
   * touches another one is settled only after the picture, with the evening before.
   */
  static String area(SiteMeasure site) {
    if (!site.held().isEmpty() || site.projectedAreaCm2().isEmpty()) {
      return "?";
    }
    double area = site.projectedAreaCm2().getAsDouble();
    String digits =
        area == 0 ? "0" : String.format(Locale.ROOT, area < 100 ? "%.1f" : "%.0f", area);
    return site.closed() ? "\u2265" + digits : touches(site) ? "~" + digits : digits;
  }

  private static boolean touches(SiteMeasure site) {
    return site.sharedOutlineFraction() > 0;
  }

  /** Draws the board's edge, a square in its A1 corner and the raft's name outside that edge. */
  void board(Sheet sheet) {
    ink.line(sheet.frame(scale), Palette.PAPER);
    Point2D.Double origin = scale.at(sheet.drawing().boardCornersPx().get(0));
    double half = 0.3 * font.getSize2D();
    ink.fill(
        new Rectangle2D.Double(origin.x - half, origin.y - half, 2 * half, 2 * half),
        Palette.PAPER);
  }

  /** Writes the raft's name outside the middle of the board's first edge. */
  void raftName(Sheet sheet) {
    String name = sheet.raft().raft().orElse("?");
    Point2D.Double a = scale.at(sheet.drawing().boardCornersPx().get(0));
    Point2D.Double b = scale.at(sheet.drawing().boardCornersPx().get(1));
    Point2D.Double d = scale.at(sheet.drawing().boardCornersPx().get(3));
    double length = Math.max(1, d.distance(a));
    double out = font.getSize2D() / length;
    double halfWidth = 0.5 * ink.widthPx(name, font) + 4;
    double x = (a.x + b.x) / 2 + out * (a.x - d.x);
    double y = (a.y + b.y) / 2 + out * (a.y - d.y);
    ink.text(
        name,
        new Point2D.Double(
            clamp(x, halfWidth, scale.width() - halfWidth),
            clamp(y, font.getSize2D(), scale.height() - font.getSize2D())),
        font);
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(value, high));
  }
}
