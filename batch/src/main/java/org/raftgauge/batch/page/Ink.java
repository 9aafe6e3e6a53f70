// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.TexturePaint;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** Draws lines and text with a dark halo, so that they show on leaves and on white board alike. */
final class Ink implements AutoCloseable {
  private final Graphics2D graphics;
  private final float linePx;

  /**
   * Starts drawing.
   *
   * @param picture what to draw on
   * @param linePx width of a line without its halo, px
   */
  Ink(BufferedImage picture, double linePx) {
    this.graphics = picture.createGraphics();
    this.linePx = (float) linePx;
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
  }

  /** Draws a line. */
  void line(Shape shape, Color colour) {
    line(shape, colour, linePx);
  }

  /**
   * Draws an outline, each of its loops thinner where it is small, so that the leaf in a small
   * plant stays to be seen and gaps between leaves do not turn into blots.
   */
  void outline(Shape shape, Color colour) {
    List<Path2D> loops = loops(shape);
    loops.forEach(loop -> stroke(loop, Palette.HALO, round(widthPx(loop) * 2.2f)));
    loops.forEach(loop -> stroke(loop, colour, round(widthPx(loop))));
  }

  private float widthPx(Shape loop) {
    Rectangle2D bounds = loop.getBounds2D();
    double extent = Math.max(bounds.getWidth(), bounds.getHeight());
    return (float) Math.max(0.4 * linePx, Math.min(linePx, extent / 55));
  }

  private static List<Path2D> loops(Shape shape) {
    List<Path2D> loops = new ArrayList<>();
    double[] at = new double[6];
    for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
      int kind = i.currentSegment(at);
      if (kind == PathIterator.SEG_MOVETO) {
        loops.add(new Path2D.Double());
        loops.get(loops.size() - 1).moveTo(at[0], at[1]);
      } else if (kind == PathIterator.SEG_LINETO) {
        loops.get(loops.size() - 1).lineTo(at[0], at[1]);
      } else if (kind == PathIterator.SEG_CLOSE) {
        loops.get(loops.size() - 1).closePath();
      }
    }
    return loops;
  }

  private static BasicStroke round(float widthPx) {
    return new BasicStroke(widthPx, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  private void line(Shape shape, Color colour, float widthPx) {
    stroke(shape, Palette.HALO, new BasicStroke(widthPx * 2.2f, 1, BasicStroke.JOIN_ROUND));
    stroke(shape, colour, new BasicStroke(widthPx, 1, BasicStroke.JOIN_ROUND));
  }

  /** Draws a broken line on a dark one. */
  void brokenLine(Shape shape, Color colour) {
    float[] dashes = {linePx * 4, linePx * 3};
    stroke(shape, Palette.HALO, new BasicStroke(linePx * 2.2f, 1, BasicStroke.JOIN_ROUND));
    stroke(
        shape,
        colour,
        new BasicStroke(linePx * 1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0));
  }

  /** Draws a slanting cross. */
  void cross(Point2D middle, double halfPx) {
    Path2D cross = new Path2D.Double();
    cross.moveTo(middle.getX() - halfPx, middle.getY() - halfPx);
    cross.lineTo(middle.getX() + halfPx, middle.getY() + halfPx);
    cross.moveTo(middle.getX() - halfPx, middle.getY() + halfPx);
    cross.lineTo(middle.getX() + halfPx, middle.getY() - halfPx);
    line(cross, Palette.PAPER);
  }

  /** Fills a shape, with a dark rim. */
  void fill(Shape shape, Color colour) {
    stroke(shape, Palette.HALO, new BasicStroke(linePx * 1.5f, 1, BasicStroke.JOIN_ROUND));
    graphics.setColor(colour);
    graphics.fill(shape);
  }

  /** Fills a shape with the hatching of leftover canopy. */
  void hatch(Shape shape) {
    BufferedImage tile = new BufferedImage(12, 12, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 144; i++) {
      tile.setRGB(i % 12, i / 12, Leftover.hatched(Palette.STRIP.getRGB(), i % 12, i / 12));
    }
    graphics.setPaint(new TexturePaint(tile, new Rectangle2D.Double(0, 0, 12, 12)));
    graphics.fill(shape);
  }

  /** Fills a shape without a rim. */
  void patch(Shape shape, Color colour) {
    graphics.setColor(colour);
    graphics.fill(shape);
  }

  private void stroke(Shape shape, Color colour, BasicStroke stroke) {
    graphics.setColor(colour);
    graphics.setStroke(stroke);
    graphics.draw(shape);
  }

  /**
   * Writes a text with a dark halo.
   *
   * @param text the text
   * @param middle middle of the text
   * @param font the font
   */
  void text(String text, Point2D middle, Font font) {
    GlyphVector glyphs = font.createGlyphVector(graphics.getFontRenderContext(), text);
    Rectangle2D bounds = glyphs.getVisualBounds();
    Shape shape =
        AffineTransform.getTranslateInstance(
                middle.getX() - bounds.getCenterX(), middle.getY() - bounds.getCenterY())
            .createTransformedShape(glyphs.getOutline());
    float halo = font.getSize2D() * 0.22f;
    stroke(shape, Palette.HALO, new BasicStroke(halo, 1, BasicStroke.JOIN_ROUND));
    graphics.setColor(Palette.PAPER);
    graphics.fill(shape);
  }

  /** Returns the width of a text, px. */
  double widthPx(String text, Font font) {
    return font.getStringBounds(text, graphics.getFontRenderContext()).getWidth();
  }

  /** Writes a text without halo from its left end on its base line. */
  void plainText(String text, Point2D start, Font font) {
    graphics.setFont(font);
    graphics.setColor(Palette.PAPER);
    graphics.drawString(text, (float) start.getX(), (float) start.getY());
  }

  /** Covers a strip over the whole width with the strip's colour. */
  void cover(int topPx, int heightPx) {
    graphics.setColor(Palette.STRIP);
    graphics.fillRect(0, topPx, Integer.MAX_VALUE / 2, heightPx);
  }

  @Override
  public void close() {
    graphics.dispose();
  }
}
