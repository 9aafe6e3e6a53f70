// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;

/** Sets a caption and the legend below a photo. */
final class CaptionStrip {
  private static final String GAP = "    ";

  /** Letters are set at whole pixels, so that a line may come out a little longer than measured. */
  private static final double SPARE = 0.96;

  private final Font font;
  private final List<String> lines;

  /**
   * Sets the lines.
   *
   * @param paragraphs parts that stay whole where they fit on a line
   * @param widthPx width of the picture
   */
  CaptionStrip(List<List<String>> paragraphs, int widthPx) {
    font = new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(Math.max(14f, widthPx / 72f));
    lines = new ArrayList<>();
    paragraphs.forEach(parts -> set(parts, SPARE * (widthPx - 2 * marginPx())));
  }

  private void set(List<String> parts, double widthPx) {
    StringBuilder line = new StringBuilder();
    for (String part : parts) {
      for (String piece : pieces(part, widthPx)) {
        if (line.length() > 0 && textPx(line + GAP + piece) > widthPx) {
          lines.add(line.toString());
          line.setLength(0);
        }
        line.append(line.length() > 0 ? GAP : "").append(piece);
      }
    }
    lines.add(line.toString());
  }

  /** Breaks a part that is wider than a line, between words where it can. */
  private List<String> pieces(String part, double widthPx) {
    List<String> pieces = new ArrayList<>();
    String rest = part;
    while (textPx(rest) > widthPx && rest.length() > 1) {
      int end = rest.length() - 1;
      while (end > 1 && textPx(rest.substring(0, end)) > widthPx) {
        end--;
      }
      int space = rest.lastIndexOf(' ', end);
      int cut = space > 0 ? space : end;
      pieces.add(rest.substring(0, cut).strip());
      rest = rest.substring(cut).strip();
    }
    pieces.add(rest);
    return pieces;
  }

  private double textPx(String text) {
    return font.getStringBounds(text, new FontRenderContext(null, true, true)).getWidth();
  }

  private int marginPx() {
    return Math.round(0.7f * font.getSize2D());
  }

  private double linePx() {
    return 1.35 * font.getSize2D();
  }

  /** Returns the height of the strip, px. */
  int heightPx() {
    return (int) Math.ceil(2 * marginPx() + linePx() * (lines.size() + 1.3));
  }

  /**
   * Draws the strip.
   *
   * @param ink what to draw with
   * @param topPx where the strip starts
   */
  void draw(Ink ink, int topPx) {
    double y = topPx + marginPx() + font.getSize2D();
    for (String line : lines) {
      ink.plainText(line, new Point2D.Double(marginPx(), y), font);
      y += linePx();
    }
    Legend.draw(ink, font, new Point2D.Double(marginPx(), y + 0.3 * linePx()));
  }
}
