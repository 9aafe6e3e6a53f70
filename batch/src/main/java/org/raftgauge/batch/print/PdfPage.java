// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.raftgauge.core.marker.Cells;

/** A page that is being drawn on, in mm from its top left corner, y down. */
final class PdfPage implements AutoCloseable {
  /** Cells that touch overlap by that, so that no renderer leaves a seam; far under a dot. */
  private static final double OVERLAP_MM = 0.01;

  private final PDPageContentStream content;
  private final PDFont font;
  private final double heightMm;

  PdfPage(PDDocument document, PDPage page, PDFont font, double heightMm) throws IOException {
    this.content = new PDPageContentStream(document, page);
    this.font = font;
    this.heightMm = heightMm;
  }

  /** An upright rectangle, mm. */
  record Box(double x, double y, double width, double height) {}

  /** Fills a rectangle: 0 black to 1 white. */
  void fill(Box box, double grey) throws IOException {
    content.setNonStrokingColor((float) grey);
    add(box);
    content.fill();
  }

  private void add(Box box) throws IOException {
    content.addRect(
        points(box.x()),
        points(heightMm - box.y() - box.height()),
        points(box.width()),
        points(box.height()));
  }

  /** Draws a rectangle's outline. */
  void outline(Box box, double lineMm, double grey) throws IOException {
    content.setStrokingColor((float) grey);
    content.setLineWidth(points(lineMm));
    add(box);
    content.stroke();
  }

  /** Draws a filled circle: 0 black to 1 white. */
  void disc(double xMm, double yMm, double diameterMm, double grey) throws IOException {
    // Four Bezier arcs; the constant 4 (sqrt(2) - 1) / 3 puts their middles on the circle.
    double r = diameterMm / 2;
    double k = r * 4 * (Math.sqrt(2) - 1) / 3;
    float x = points(xMm);
    float y = points(heightMm - yMm);
    content.setNonStrokingColor((float) grey);
    content.moveTo(x + points(r), y);
    content.curveTo(x + points(r), y + points(k), x + points(k), y + points(r), x, y + points(r));
    content.curveTo(x - points(k), y + points(r), x - points(r), y + points(k), x - points(r), y);
    content.curveTo(x - points(r), y - points(k), x - points(k), y - points(r), x, y - points(r));
    content.curveTo(x + points(k), y - points(r), x + points(r), y - points(k), x + points(r), y);
    content.fill();
  }

  /** Draws a mark's black cells in one path, merged along rows. */
  void cells(Cells cells, double xMm, double yMm, double sideMm) throws IOException {
    double cell = sideMm / cells.side();
    content.setNonStrokingColor(0f);
    for (int row = 0; row < cells.side(); row++) {
      for (int from = 0; from < cells.side(); from++) {
        int to = from;
        while (to < cells.side() && cells.black(to, row)) {
          to++;
        }
        if (to > from) {
          add(new Box(xMm + from * cell, yMm + row * cell, (to - from) * cell, cell));
          from = to;
        }
      }
      seams(cells, row, new Box(xMm, yMm, cell, cell));
    }
    content.fill();
  }

  /** Covers the seams between black cells of a row and the next; the box is the first cell. */
  private void seams(Cells cells, int row, Box first) throws IOException {
    for (int c = 0; row + 1 < cells.side() && c < cells.side(); c++) {
      if (cells.black(c, row) && cells.black(c, row + 1)) {
        add(
            new Box(
                first.x() + c * first.width(),
                first.y() + (row + 1) * first.height() - OVERLAP_MM / 2,
                first.width(),
                OVERLAP_MM));
      }
    }
  }

  /** Draws a line. */
  void line(double x1, double y1, double x2, double y2) throws IOException {
    content.setStrokingColor(0f);
    content.setLineWidth(points(0.2));
    content.moveTo(points(x1), points(heightMm - y1));
    content.lineTo(points(x2), points(heightMm - y2));
    content.stroke();
  }

  /** Fills the upper left corner of a box whose upper left end is given, black. */
  void corner(double xMm, double yMm, double sideMm) throws IOException {
    content.setNonStrokingColor(0f);
    content.moveTo(points(xMm), points(heightMm - yMm));
    content.lineTo(points(xMm + sideMm), points(heightMm - yMm));
    content.lineTo(points(xMm), points(heightMm - yMm - sideMm));
    content.fill();
  }

  /** Draws a small triangle that points up, its tip at a place. */
  void arrowUp(double xMm, double yMm, double sizeMm) throws IOException {
    content.setNonStrokingColor(0f);
    content.moveTo(points(xMm), points(heightMm - yMm));
    content.lineTo(points(xMm - sizeMm / 2), points(heightMm - yMm - sizeMm));
    content.lineTo(points(xMm + sizeMm / 2), points(heightMm - yMm - sizeMm));
    content.fill();
  }

  /** Size and greyness of letters: mm; 0 black to 1 white. */
  record Type(double sizeMm, double grey) {}

  /** Writes a text from its left end on its base line; signs that the font lacks become "?". */
  void text(String text, double xMm, double yMm, double sizeMm) throws IOException {
    greyText(text, xMm, yMm, new Type(sizeMm, 0));
  }

  /** Writes a text in a type. */
  void greyText(String text, double xMm, double yMm, Type type) throws IOException {
    content.setNonStrokingColor((float) type.grey());
    content.beginText();
    content.setFont(font, points(type.sizeMm()));
    content.newLineAtOffset(points(xMm), points(heightMm - yMm));
    content.showText(printable(font, text));
    content.endText();
  }

  /** Returns the width of a text, mm. */
  double widthMm(String text, double sizeMm) throws IOException {
    return widthMm(font, text, sizeMm);
  }

  /** Returns the width of a text in a font, mm. */
  static double widthMm(PDFont font, String text, double sizeMm) throws IOException {
    return font.getStringWidth(printable(font, text)) / 1000 * sizeMm;
  }

  private static String printable(PDFont font, String text) throws IOException {
    StringBuilder shown = new StringBuilder();
    for (int code : text.codePoints().toArray()) {
      String sign = Character.toString(code);
      try {
        font.encode(sign);
        shown.append(sign);
      } catch (IllegalArgumentException lacking) {
        shown.append('?');
      }
    }
    return shown.toString();
  }

  private static float points(double mm) {
    return (float) (mm * PdfFile.POINTS_PER_MM);
  }

  @Override
  public void close() throws IOException {
    content.close();
  }
}
