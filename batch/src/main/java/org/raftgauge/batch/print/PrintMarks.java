// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Prints tags and corner markers, one a label or a field to cut out. */
public final class PrintMarks {
  private static final double TEXT_MM = 3;
  private static final double LINE_MM = 4;
  private static final double LEFT_MM = 20;

  /** Narrower fields would cut their words. */
  private static final double LEAST_FIELD_MM = 58;

  private PrintMarks() {}

  /**
   * Returns the sheet that suits marks where there are no labels: fields for the largest mark.
   *
   * @param marks the marks
   * @param paper the sheet
   * @return the grid; nothing where the largest mark does not fit the sheet
   */
  public static Optional<LabelGrid> fields(List<Mark> marks, Paper paper) {
    double outer = marks.stream().mapToDouble(Mark::outerMm).max().orElse(1);
    return LabelGrid.filling(paper, Math.max(outer + 1, LEAST_FIELD_MM), outer + 2 * LINE_MM + 1);
  }

  /**
   * Says which mark is too large for a label, with its quiet zone and its two lines of text.
   *
   * @param marks the marks
   * @param grid the sheet
   * @return the first such mark's words and the room there is
   */
  public static Optional<String> tooLarge(List<Mark> marks, LabelGrid grid) {
    double room = Math.min(grid.widthMm(), grid.heightMm() - 2 * LINE_MM);
    return marks.stream()
        .filter(m -> m.outerMm() > room + 1e-6)
        .findFirst()
        .map(m -> words(m, "a label", room));
  }

  /**
   * Says how much room the largest mark needs, and a sheet has.
   *
   * @param marks the marks, at least one
   * @param paper the sheet
   * @return the mark's words and both sizes
   */
  public static String tooLarge(List<Mark> marks, Paper paper) {
    Mark largest = marks.stream().max(Comparator.comparingDouble(Mark::outerMm)).orElseThrow();
    return words(
        largest,
        "the sheet",
        Math.min(LabelGrid.wideMm(paper) - 1, LabelGrid.highMm(paper) - 2 * LINE_MM - 1));
  }

  private static String words(Mark mark, String what, double roomMm) {
    return String.format(
        Locale.ROOT,
        "%s needs %.1f mm with its white rim, %s has room for %.1f mm",
        mark.foot(),
        mark.outerMm(),
        what,
        roomMm);
  }

  /**
   * Marks for sheets of one kind.
   *
   * @param marks marks that fit
   * @param grid the sheet
   */
  public record Batch(List<Mark> marks, LabelGrid grid) {

    /** Copies the list. */
    public Batch {
      marks = List.copyOf(marks);
    }
  }

  /**
   * Prints marks; where labels leave no room for the ruler, a first page carries it.
   *
   * @param batches marks with their sheets
   * @param file the PDF to write
   * @return the number of pages
   * @throws IOException if it cannot be written
   */
  public static int print(List<Batch> batches, Path file) throws IOException {
    int pages = 0;
    try (PdfFile pdf = new PdfFile("Tags and corner markers")) {
      boolean bare = batches.stream().anyMatch(b -> !b.grid().hasFoot());
      if (bare) {
        Paper paper = batches.get(0).grid().paper();
        try (PdfPage page = pdf.page(paper.widthMm(), paper.heightMm())) {
          page.text("Print this page alone on plain paper first.", LEFT_MM, LEFT_MM, 4);
          CheckLine.draw(page, LEFT_MM, paper.heightMm());
          pages++;
        }
      }
      for (Batch batch : batches) {
        pages += sheets(pdf, batch);
      }
      pdf.save(file);
    }
    return pages;
  }

  private static int sheets(PdfFile pdf, Batch batch) throws IOException {
    LabelGrid grid = batch.grid();
    int pages = 0;
    for (int first = 0; first < batch.marks().size(); first += grid.labels()) {
      try (PdfPage page = pdf.page(grid.paper().widthMm(), grid.paper().heightMm())) {
        int last = Math.min(batch.marks().size(), first + grid.labels());
        for (int i = first; i < last; i++) {
          label(page, batch.marks().get(i), grid.box(i - first));
        }
        if (grid.hasFoot()) {
          CheckLine.draw(page, LEFT_MM, grid.paper().heightMm());
        }
      }
      pages++;
    }
    return pages;
  }

  private static void label(PdfPage page, Mark mark, PdfPage.Box box) throws IOException {
    page.outline(box, 0.1, 0.75);
    double middle = box.x() + box.width() / 2;
    double left = middle - mark.sideMm() / 2;
    double top = box.y() + (box.height() - mark.sideMm()) / 2;
    page.cells(mark.cells(), left, top, mark.sideMm());
    // The words lie outside the quiet zone, at the label's edges.
    String head = fitted(page, mark.head() + ", this side to row A", box.width() - 6);
    double wide = page.widthMm(head, TEXT_MM) + TEXT_MM;
    page.arrowUp(middle - wide / 2 + TEXT_MM / 2, box.y() + 1.2, 2.2);
    page.text(head, middle - wide / 2 + 1.4 * TEXT_MM, box.y() + 3.4, TEXT_MM);
    String foot = fitted(page, mark.foot(), box.width() - 4);
    page.text(
        foot, middle - page.widthMm(foot, TEXT_MM) / 2, box.y() + box.height() - 1.2, TEXT_MM);
  }

  private static String fitted(PdfPage page, String text, double widthMm) throws IOException {
    String shown = text;
    while (shown.length() > 1 && page.widthMm(shown, TEXT_MM) > widthMm) {
      shown = shown.substring(0, shown.length() - 1);
    }
    return shown;
  }
}
