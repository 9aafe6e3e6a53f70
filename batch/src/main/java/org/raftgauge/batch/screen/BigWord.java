// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Letters as shapes, made bold, from the font that comes with PDFBox. */
final class BigWord {
  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  /** Width of the line that is drawn round the letters, of the em: what a bold cut adds. */
  private static final double BOLD = 0.05;

  /** Room between letters, of the em, so that bold ones do not touch. */
  private static final double APART = 0.06;

  private BigWord() {}

  /**
   * Returns the outline of a word, y down, its box at the origin.
   *
   * @param word letters and spaces
   */
  static Shape outline(String word) {
    try (InputStream in = TTFParser.class.getResourceAsStream(FONT);
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
      double em = font.getUnitsPerEm();
      Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
      double x = 0;
      for (int code : word.codePoints().toArray()) {
        int glyph = font.getUnicodeCmapLookup().getGlyphId(code);
        GlyphData data = font.getGlyph().getGlyph(glyph);
        if (data != null) {
          path.append(
              data.getPath().getPathIterator(AffineTransform.getTranslateInstance(x, 0)), false);
        }
        x += font.getAdvanceWidth(glyph) + APART * em;
      }
      Area bold = new Area(path);
      bold.add(new Area(new BasicStroke((float) (BOLD * em)).createStrokedShape(path)));
      return atOrigin(AffineTransform.getScaleInstance(1, -1).createTransformedShape(bold));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // the font is inside the program
    }
  }

  /** Moves a shape so that its box begins at the origin. */
  static Shape atOrigin(Shape shape) {
    Rectangle2D box = shape.getBounds2D();
    return AffineTransform.getTranslateInstance(-box.getX(), -box.getY())
        .createTransformedShape(shape);
  }
}
