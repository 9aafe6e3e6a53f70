// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.evening.TaskGroup;

/** A task on a printed sheet. */
final class TaskBlock {
  private static final double BOX_MM = 5.5;
  private static final double INDENT_MM = 9;
  private static final double LEAD_MM = 4.4;
  private static final double TEXT_MM = 3.2;
  private static final double LINE_MM = 4.6;
  private static final double SMALL_MM = 2.3;
  private static final double GAP_MM = 5;
  private static final double BETWEEN_MM = 6;
  private static final double GREY = 0.35;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private final Task task;
  private final List<String> lead;
  private final List<String> text;
  private final List<String> item;
  private final Optional<BoardPlan> plan;
  private final Optional<TickList> ticks;
  private final Optional<GramBlanks> blanks;
  private final double widthMm;

  /**
   * Where a task is laid out.
   *
   * @param due the day that it stands under, if any
   * @param widthMm the room across
   * @param font measures texts
   */
  record Room(Optional<LocalDate> due, double widthMm, Wrap.Font font) {}

  private TaskBlock(TaskGroup group, Optional<BoardPlan> plan, Room place) throws IOException {
    this.task = group.first();
    this.plan = plan;
    this.widthMm = place.widthMm();
    Wrap wrap = new Wrap(place.font());
    double room = widthMm - INDENT_MM - plan.map(p -> p.widthMm() + BETWEEN_MM).orElse(0.0);
    this.lead = wrap.lines(group.isSeveral() ? lead(group) : lead(task), LEAD_MM, room);
    this.text = new ArrayList<>();
    for (String line : group.isSeveral() ? texts(group) : texts(task, place.due())) {
      text.addAll(wrap.lines(line, TEXT_MM, room));
    }
    this.item = group.isSeveral() ? List.of() : wrap.lines(task.item(), SMALL_MM, room);
    this.ticks =
        group.isSeveral() ? Optional.of(new TickList(group.tasks(), room)) : Optional.empty();
    boolean weighs = task.action() == Task.Action.WEIGH && !task.where().sites().isEmpty();
    this.blanks =
        weighs ? Optional.of(new GramBlanks(task.where().sites(), room)) : Optional.empty();
  }

  /**
   * Lays a task out, or several as one.
   *
   * @param group the task or tasks
   * @param boardOf the board of a raft
   * @param room where
   */
  static TaskBlock of(
      TaskGroup group, Function<String, Optional<PrintWorklist.Board>> boardOf, Room room)
      throws IOException {
    Task task = group.first();
    boolean drawn = !task.where().sites().isEmpty() || task.action() == Task.Action.INSPECT;
    Optional<PrintWorklist.Board> board =
        drawn && !task.where().raft().isEmpty()
            ? boardOf.apply(task.where().raft())
            : Optional.empty();
    Optional<BoardPlan> plan = board.map(b -> new BoardPlan(b, task.where().sites()));
    return new TaskBlock(group, plan, room);
  }

  private static String lead(TaskGroup group) {
    return "Photograph · " + group.tasks().size() + " rafts that were expected and not seen";
  }

  private static List<String> texts(TaskGroup group) {
    String pond = group.first().where().pond();
    String where = pond.isEmpty() ? "of no pond" : "pond " + pond;
    if (group.notes().isEmpty()) {
      return List.of(where);
    }
    String amiss = String.join(" ", group.notes());
    return List.of(where, "Look at what was amiss when last seen. " + amiss);
  }

  private static String lead(Task task) {
    Task.Where where = task.where();
    String action =
        switch (task.action()) {
          case PHOTOGRAPH_AT_ALL -> "photograph";
          case CHECK_THE_STATION -> "check";
          case MEND_THE_BOOK, PHOTOGRAPH_AGAIN, INSPECT, HARVEST, RE_SPACE, WEIGH, REPLACE_TAG ->
              task.action().words();
        };
    String what = Character.toUpperCase(action.charAt(0)) + action.substring(1);
    if (where.raft().isEmpty()) {
      return what + " · " + where.words();
    }
    return what + " · raft " + where.raft();
  }

  private static List<String> texts(Task task, Optional<LocalDate> due) {
    Task.Where where = task.where();
    List<String> parts = new ArrayList<>();
    if (!where.raft().isEmpty() && !where.pond().isEmpty()) {
      parts.add("pond " + where.pond());
    }
    if (!where.berth().isEmpty()) {
      parts.add("berth " + where.berth());
    }
    task.by()
        .filter(day -> due.filter(day::equals).isEmpty())
        .ifPresent(day -> parts.add("was due " + DAY.format(day)));
    List<String> texts = new ArrayList<>();
    if (!parts.isEmpty()) {
      texts.add(String.join(", ", parts));
    }
    if (!where.sites().isEmpty()) {
      String sites = where.sites().stream().map(SiteId::toString).collect(Collectors.joining(", "));
      texts.add((where.sites().size() == 1 ? "site " : "sites ") + sites);
    }
    texts.add(task.why());
    return texts;
  }

  /** Returns the height that it takes with the gap below it. */
  double heightMm() {
    return Math.max(wordsMm(), plan.map(BoardPlan::heightMm).orElse(0.0)) + GAP_MM;
  }

  /** Returns the height of its words, the line to write on and its name. */
  private double wordsMm() {
    return lead.size() * 6
        + text.size() * LINE_MM
        + (answered() ? 8.4 : 0)
        + blanks.map(GramBlanks::heightMm).orElse(0.0)
        + item.size() * 3.2
        + ticks.map(TickList::heightMm).orElse(0.0);
  }

  /** Says whether there is something to write down; a photograph speaks for itself. */
  private boolean answered() {
    return switch (task.action()) {
      case MEND_THE_BOOK, PHOTOGRAPH_AT_ALL, PHOTOGRAPH_AGAIN -> false;
      case CHECK_THE_STATION, INSPECT, HARVEST, RE_SPACE, WEIGH, REPLACE_TAG -> true;
    };
  }

  /** Draws it below and right of a place. */
  void draw(PdfPage page, double leftMm, double topMm) throws IOException {
    if (ticks.isEmpty()) {
      page.outline(new PdfPage.Box(leftMm, topMm, BOX_MM, BOX_MM), 0.4, 0);
    }
    double x = leftMm + INDENT_MM;
    double y = topMm + 4.4;
    for (String line : lead) {
      page.text(line, x, y, LEAD_MM);
      y += 6;
    }
    for (String line : text) {
      page.text(line, x, y, TEXT_MM);
      y += LINE_MM;
    }
    if (blanks.isPresent()) {
      blanks.get().draw(page, x, y);
      y += blanks.get().heightMm();
    }
    if (answered()) {
      y += 4;
      page.text("Found:", x, y, TEXT_MM);
      double right = leftMm + widthMm - plan.map(p -> p.widthMm() + BETWEEN_MM).orElse(0.0);
      page.line(x + 12, y + 0.6, right, y + 0.6);
      y += 4.4;
    }
    if (ticks.isPresent()) {
      ticks.get().draw(page, x, y - 3);
    }
    for (String line : item) {
      page.greyText(line, x, y, new PdfPage.Type(SMALL_MM, GREY));
      y += 3.2;
    }
    if (plan.isPresent()) {
      plan.get().draw(page, leftMm + widthMm - plan.get().widthMm(), topMm);
    }
  }
}
