// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.SlotProposal;

/**
 * Draws proposed slots on their photo: outline, name, the corner taken for A1's as a disc, and the
 * holes where the layout has them.
 */
public final class SlotPicture {
  private static final Color OUTLINE = new Color(0xF0E442);
  private static final Color HOLE = new Color(0x56B4E9);
  private static final Color ORIGIN = new Color(0xD55E00);
  private static final Color HALO = new Color(0x101010);

  private final Graphics2D graphics;
  private final float linePx;

  private SlotPicture(Graphics2D graphics, int widthPx) {
    this.graphics = graphics;
    this.linePx = Math.max(2f, widthPx / 600f);
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
  }

  /**
   * Draws the slots.
   *
   * @param photo the photo
   * @param slots the proposals, named s1, s2, ... in their order
   * @return the picture, of the photo's size
   */
  public static BufferedImage draw(RgbImage photo, List<SlotProposal> slots) {
    BufferedImage picture =
        new BufferedImage(photo.width(), photo.height(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < photo.height(); y++) {
      for (int x = 0; x < photo.width(); x++) {
        int rgb = photo.value(x, y, 0) << 16 | photo.value(x, y, 1) << 8 | photo.value(x, y, 2);
        picture.setRGB(x, y, rgb);
      }
    }
    Graphics2D graphics = picture.createGraphics();
    SlotPicture drawing = new SlotPicture(graphics, photo.width());
    for (int i = 0; i < slots.size(); i++) {
      drawing.slot("s" + (i + 1), slots.get(i));
    }
    graphics.dispose();
    return picture;
  }

  private void slot(String name, SlotProposal slot) {
    for (SiteId site : slot.layout().grid().sites()) {
      PointMm c = slot.layout().grid().centre(site);
      PointPx p = slot.pose().toPhoto(c);
      double r = slot.layout().grid().holeMm() / 2 / slot.pose().mmPerPxAt(c);
      line(new Ellipse2D.Double(p.xPx() - r, p.yPx() - r, 2 * r, 2 * r), HOLE, linePx * 0.6f);
    }
    Path2D outline = new Path2D.Double();
    double x = 0;
    double y = 0;
    for (int i = 0; i < 4; i++) {
      PointPx p = slot.cornersPx().get(i);
      if (i == 0) {
        outline.moveTo(p.xPx(), p.yPx());
      } else {
        outline.lineTo(p.xPx(), p.yPx());
      }
      x += p.xPx() / 4;
      y += p.yPx() / 4;
    }
    outline.closePath();
    line(outline, OUTLINE, linePx);
    PointPx origin = slot.cornersPx().get(0);
    double r = 4 * linePx;
    Shape disc = new Ellipse2D.Double(origin.xPx() - r, origin.yPx() - r, 2 * r, 2 * r);
    graphics.setColor(ORIGIN);
    graphics.fill(disc);
    line(disc, Color.WHITE, linePx / 2);
    text(name, (float) x, (float) y);
  }

  private void line(Shape shape, Color colour, float width) {
    graphics.setColor(HALO);
    graphics.setStroke(new BasicStroke(2.2f * width));
    graphics.draw(shape);
    graphics.setColor(colour);
    graphics.setStroke(new BasicStroke(width));
    graphics.draw(shape);
  }

  private void text(String text, float x, float y) {
    Font font = new Font(Font.SANS_SERIF, Font.BOLD, Math.round(22 * linePx / 2));
    Shape glyphs =
        font.createGlyphVector(graphics.getFontRenderContext(), text)
            .getOutline(x - 11 * linePx / 2, y);
    graphics.setColor(HALO);
    graphics.setStroke(new BasicStroke(2.5f * linePx, 1, BasicStroke.JOIN_ROUND));
    graphics.draw(glyphs);
    graphics.setColor(Color.WHITE);
    graphics.fill(glyphs);
  }
}
