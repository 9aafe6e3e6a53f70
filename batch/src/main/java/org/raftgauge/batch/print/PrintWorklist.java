// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.DueDay;
import org.raftgauge.core.evening.HiddenRow;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.evening.TaskGroup;

/**
 * Prints tomorrow's work: a box to tick for each task, its reason, a line to write on, and where
 * sites are meant a plan of the board with a box at each of them.
 */
public final class PrintWorklist {
  static final double MARGIN_MM = 15;
  private static final double HEAD_MM = 5.5;
  private static final double TEXT_MM = 3.2;
  private static final double SMALL_MM = 2.6;
  private static final double GROUP_MM = 9;

  /** Rafts that go together on a page of either paper. */
  private static final int MOST_OF_GROUP = 100;

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

  private static final DateTimeFormatter TITLE =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private final Sheet sheet;
  private final Paper paper;

  private PrintWorklist(Sheet sheet, Paper paper) {
    this.sheet = sheet;
    this.paper = paper;
  }

  /**
   * What is printed.
   *
   * @param evening the evening that the tasks are from
   * @param corrections a line on the corrections that are obeyed, or empty
   * @param tasks most urgent first
   * @param hidden rows that were marked seen, done or put off
   * @param boardOf the board of a raft, where it is known
   */
  public record Sheet(
      LocalDate evening,
      String corrections,
      List<Task> tasks,
      List<HiddenRow> hidden,
      Function<String, Optional<Board>> boardOf) {

    /** Copies the list. */
    public Sheet {
      tasks = List.copyOf(tasks);
      hidden = List.copyOf(hidden);
    }
  }

  /**
   * A raft's board.
   *
   * @param layout the board
   * @param planted the sites where something grows
   */
  public record Board(Layout layout, Set<SiteId> planted) {

    /** Copies the set. */
    public Board {
      planted = Set.copyOf(planted);
    }
  }

  /**
   * Prints.
   *
   * @param sheet what is printed
   * @param paper on which paper, upright
   * @param file the PDF to write
   * @return the number of pages
   * @throws IOException if it cannot be written
   */
  public static int print(Sheet sheet, Paper paper, Path file) throws IOException {
    return new PrintWorklist(sheet, paper).print(file);
  }

  private int print(Path file) throws IOException {
    try (PdfFile pdf = new PdfFile("Worklist after the evening of " + sheet.evening())) {
      List<List<Placed>> pages = pages(pdf);
      for (int i = 0; i < pages.size(); i++) {
        try (PdfPage page = pdf.page(paper.widthMm(), paper.heightMm())) {
          head(page, i + 1, pages.size());
          draw(page, pages.get(i));
        }
      }
      pdf.save(file);
      return pages.size();
    }
  }

  /** A task under the title of its day. */
  private record Placed(String title, TaskBlock block) {}

  /** Fills page after page; a page begins with its day's title again. */
  private List<List<Placed>> pages(PdfFile pdf) throws IOException {
    double room = paper.heightMm() - top() - MARGIN_MM;
    List<List<Placed>> pages = new ArrayList<>(List.of(new ArrayList<>()));
    double used = 0;
    for (Placed placed : placed(pdf)) {
      List<Placed> page = pages.get(pages.size() - 1);
      boolean first = page.isEmpty() || !page.get(page.size() - 1).title().equals(placed.title());
      double needed = placed.block().heightMm() + (first ? GROUP_MM : 0);
      if (used + needed > room && used > 0) {
        pages.add(new ArrayList<>());
        used = 0;
        needed = placed.block().heightMm() + GROUP_MM;
      }
      pages.get(pages.size() - 1).add(placed);
      used += needed;
    }
    return pages;
  }

  private List<Placed> placed(PdfFile pdf) throws IOException {
    List<Placed> all = new ArrayList<>();
    for (DueDay due : DueDay.of(sheet.tasks(), tomorrow())) {
      TaskBlock.Room room =
          new TaskBlock.Room(due.day(), paper.widthMm() - 2 * MARGIN_MM, pdf::widthMm);
      for (TaskGroup group : due.groups()) {
        for (TaskGroup part : parts(group)) {
          all.add(new Placed(title(due), TaskBlock.of(part, sheet.boardOf(), room)));
        }
      }
    }
    return all;
  }

  private LocalDate tomorrow() {
    return sheet.evening().plusDays(1);
  }

  private String title(DueDay due) {
    return due.day().map(d -> "By " + TITLE.format(d)).orElse("No fixed day");
  }

  /** Parts a group that a page cannot hold. */
  private static List<TaskGroup> parts(TaskGroup group) {
    List<TaskGroup> parts = new ArrayList<>();
    List<Task> all = group.tasks();
    for (int from = 0; from < all.size(); from += MOST_OF_GROUP) {
      parts.add(new TaskGroup(all.subList(from, Math.min(all.size(), from + MOST_OF_GROUP))));
    }
    return parts;
  }

  private double top() {
    return MARGIN_MM + 2 * HEAD_MM + 2 + (sheet.hidden().isEmpty() ? 0 : 1.5 * TEXT_MM);
  }

  private void head(PdfPage page, int number, int pages) throws IOException {
    page.text(
        "To do from " + DAY.format(sheet.evening().plusDays(1)), MARGIN_MM, MARGIN_MM + 4, HEAD_MM);
    String from =
        "from the photos of the evening of "
            + DAY.format(sheet.evening())
            + ". A verdict says that growth departs, not why.";
    page.text(from, MARGIN_MM, MARGIN_MM + HEAD_MM + 4, TEXT_MM);
    String count = "page " + number + " of " + pages;
    page.text(
        count, paper.widthMm() - MARGIN_MM - page.widthMm(count, TEXT_MM), MARGIN_MM + 4, TEXT_MM);
    if (sheet.tasks().isEmpty()) {
      String nothing = sheet.hidden().isEmpty() ? "Nothing stands out." : "Nothing else to do.";
      page.text(nothing, MARGIN_MM, top() + 6, 4);
    }
    if (number == 1 && !sheet.hidden().isEmpty()) {
      page.text(
          "Not on this sheet: " + HiddenRow.words(sheet.hidden(), SHORT::format) + ".",
          MARGIN_MM,
          MARGIN_MM + HEAD_MM + TEXT_MM + 5.5,
          TEXT_MM);
    }
    page.text(
        "The small grey names tell the office which row of the list was done or put off.",
        MARGIN_MM,
        paper.heightMm() - 9,
        SMALL_MM);
    if (!sheet.corrections().isEmpty()) {
      page.text("Judged " + sheet.corrections() + ".", MARGIN_MM, paper.heightMm() - 5.5, SMALL_MM);
    }
  }

  private void draw(PdfPage page, List<Placed> placed) throws IOException {
    double y = top();
    String title = "";
    for (Placed each : placed) {
      if (!each.title().equals(title)) {
        title = each.title();
        page.fill(
            new PdfPage.Box(MARGIN_MM, y + 0.5, paper.widthMm() - 2 * MARGIN_MM, GROUP_MM - 3),
            0.88);
        page.text(title, MARGIN_MM + 2, y + 5, 4);
        y += GROUP_MM;
      }
      each.block().draw(page, MARGIN_MM, y);
      y += each.block().heightMm();
    }
  }
}
