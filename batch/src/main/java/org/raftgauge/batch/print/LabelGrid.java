// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sheet of equal labels, or of equal fields to cut.
 *
 * @param paper the sheet, upright
 * @param widthMm width of a label, mm
 * @param heightMm height of a label, mm
 * @param columns labels side by side
 * @param rows labels below each other
 * @param leftMm left edge of the first label, mm
 * @param topMm top edge of the first label, mm
 * @param gapXMm between labels side by side, mm
 * @param gapYMm between labels below each other, mm
 */
public record LabelGrid(
    Paper paper,
    double widthMm,
    double heightMm,
    int columns,
    int rows,
    double leftMm,
    double topMm,
    double gapXMm,
    double gapYMm) {
  private static final double EDGE_MM = 8;
  private static final Pattern TEXT =
      Pattern.compile(
          "(\\d{1,2})x(\\d{1,2}):(\\d+(?:\\.\\d+)?)x(\\d+(?:\\.\\d+)?)"
              + "(?:@(\\d+(?:\\.\\d+)?),(\\d+(?:\\.\\d+)?))?");

  /**
   * Returns the grid of fields for marks of one outer size that fills a sheet.
   *
   * @param paper the sheet
   * @param widthMm least width of a field, mm
   * @param heightMm least height of a field, mm
   * @return the grid; nothing where not one field fits
   */
  static Optional<LabelGrid> filling(Paper paper, double widthMm, double heightMm) {
    int columns = (int) (wideMm(paper) / widthMm);
    int rows = (int) (highMm(paper) / heightMm);
    return columns < 1 || rows < 1
        ? Optional.empty()
        : Optional.of(
            new LabelGrid(
                paper,
                widthMm,
                heightMm,
                columns,
                rows,
                (paper.widthMm() - columns * widthMm) / 2,
                EDGE_MM,
                0,
                0));
  }

  /**
   * Reads a sheet of labels from {@code COLUMNSxROWS:WIDTHxHEIGHT@LEFT,TOP}, mm; without
   * {@code @LEFT,TOP} the labels touch and the grid is centred.
   *
   * @param text the text form
   * @param paper the sheet
   * @return the grid; nothing where the text is none or the labels do not fit the sheet
   */
  public static Optional<LabelGrid> parse(String text, Paper paper) {
    Matcher m = TEXT.matcher(text.strip());
    if (!m.matches()) {
      return Optional.empty();
    }
    int columns = Integer.parseInt(m.group(1));
    int rows = Integer.parseInt(m.group(2));
    double width = Double.parseDouble(m.group(3));
    double height = Double.parseDouble(m.group(4));
    double spareX = paper.widthMm() - columns * width;
    double spareY = paper.heightMm() - rows * height;
    double left = m.group(5) == null ? spareX / 2 : Double.parseDouble(m.group(5));
    double top = m.group(6) == null ? spareY / 2 : Double.parseDouble(m.group(6));
    // Margins are alike on both sides; what is left lies between the labels.
    double gapX = columns > 1 ? (spareX - 2 * left) / (columns - 1) : 0;
    double gapY = rows > 1 ? (spareY - 2 * top) / (rows - 1) : 0;
    boolean fits =
        columns > 0
            && rows > 0
            && width > 0
            && height > 0
            && spareX > -1e-6
            && spareY > -1e-6
            && gapX > -1e-6
            && gapY > -1e-6;
    return fits
        ? Optional.of(new LabelGrid(paper, width, height, columns, rows, left, top, gapX, gapY))
        : Optional.empty();
  }

  /** Returns the width that a sheet has for fields, mm. */
  static double wideMm(Paper paper) {
    return paper.widthMm() - 2 * EDGE_MM;
  }

  /** Returns the height that a sheet has for fields above the ruler, mm. */
  static double highMm(Paper paper) {
    return paper.heightMm() - EDGE_MM - CheckLine.FOOT_MM - 2;
  }

  int labels() {
    return columns * rows;
  }

  /** Returns the place of a label on its sheet. */
  PdfPage.Box box(int label) {
    return new PdfPage.Box(
        leftMm + label % columns * (widthMm + gapXMm),
        topMm + Math.floorDiv(label, columns) * (heightMm + gapYMm),
        widthMm,
        heightMm);
  }

  /** Says whether the sheet has room for the ruler below its labels. */
  boolean hasFoot() {
    PdfPage.Box last = box(labels() - 1);
    return last.y() + last.height() <= paper.heightMm() - CheckLine.FOOT_MM + 0.5;
  }
}
