// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.calibrate.CalibrationTarget;

/** Prints a calibration target on one sheet. */
public final class PrintTarget {
  private static final double MARGIN_MM = 8;
  private static final double HEAD_MM = 7;

  private PrintTarget() {}

  /**
   * Says whether a target fits a sheet lying on its long side.
   *
   * @param target the target
   * @param paper the sheet
   * @return how much room there is if it does not fit; nothing if it does
   */
  public static Optional<String> tooLarge(CalibrationTarget target, Paper paper) {
    double wide = paper.heightMm() - 2 * MARGIN_MM;
    double high = paper.widthMm() - HEAD_MM - CheckLine.FOOT_MM - MARGIN_MM;
    return widthMm(target) > wide || heightMm(target) > high
        ? Optional.of(
            String.format(
                java.util.Locale.ROOT,
                "is %.0f x %.0f mm, the sheet has room for %.0f x %.0f mm",
                widthMm(target),
                heightMm(target),
                wide,
                high))
        : Optional.empty();
  }

  /**
   * Prints the target.
   *
   * @param target a target that fits
   * @param paper the sheet, laid on its long side
   * @param file the PDF to write
   * @throws IOException if it cannot be written
   */
  public static void print(CalibrationTarget target, Paper paper, Path file) throws IOException {
    double width = paper.heightMm();
    double height = paper.widthMm();
    try (PdfFile pdf = new PdfFile("Calibration target " + target)) {
      try (PdfPage page = pdf.page(width, height)) {
        page.text(
            "--board " + target + "   Glue flat on glass, metal or stiff foam; no gloss.",
            MARGIN_MM,
            MARGIN_MM + 0.5,
            3.2);
        double left = (width - widthMm(target)) / 2;
        double room = height - HEAD_MM - CheckLine.FOOT_MM - MARGIN_MM + 4;
        double top = HEAD_MM + (room - heightMm(target)) / 2;
        draw(page, target, left, top);
        CheckLine.draw(page, MARGIN_MM, height);
      }
      pdf.save(file);
    }
  }

  private static double widthMm(CalibrationTarget t) {
    return switch (t.shape()) {
      case CHESSBOARD -> t.columns() * t.sizeMm();
      case SQUARES, CIRCLES -> (t.columns() - 1) * t.pitchMm() + t.sizeMm();
      case STAGGERED_CIRCLES -> (t.columns() - 1) * t.pitchMm() / 2 + t.sizeMm();
    };
  }

  private static double heightMm(CalibrationTarget t) {
    return switch (t.shape()) {
      case CHESSBOARD -> t.rows() * t.sizeMm();
      case SQUARES, CIRCLES -> (t.rows() - 1) * t.pitchMm() + t.sizeMm();
      case STAGGERED_CIRCLES -> (t.rows() - 1) * t.pitchMm() * Math.sqrt(3) / 2 + t.sizeMm();
    };
  }

  private static void draw(PdfPage page, CalibrationTarget t, double left, double top)
      throws IOException {
    boolean staggered = t.shape() == CalibrationTarget.Shape.STAGGERED_CIRCLES;
    double pitchX = staggered ? t.pitchMm() / 2 : t.pitchMm();
    double pitchY = staggered ? t.pitchMm() * Math.sqrt(3) / 2 : t.pitchMm();
    boolean everySecond = staggered || t.shape() == CalibrationTarget.Shape.CHESSBOARD;
    for (int row = 0; row < t.rows(); row++) {
      for (int column = 0; column < t.columns(); column++) {
        double x = left + column * pitchX;
        double y = top + row * pitchY;
        if (everySecond && (row + column) % 2 == 1) {
          continue;
        }
        switch (t.shape()) {
          case CHESSBOARD, SQUARES -> page.fill(new PdfPage.Box(x, y, t.sizeMm(), t.sizeMm()), 0);
          case CIRCLES, STAGGERED_CIRCLES ->
              page.disc(x + t.sizeMm() / 2, y + t.sizeMm() / 2, t.sizeMm(), 0);
        }
      }
    }
  }
}
