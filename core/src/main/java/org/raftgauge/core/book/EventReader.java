// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvTable;

/** Reads {@code events.csv}, row by row; what the events do together is {@link Ledger}'s. */
final class EventReader {
  static final Columns COLUMNS =
      new Columns(
          List.of("at", "kind", "raft"),
          List.of("site", "to_raft", "to_site", "by", "note", "to_layout"));

  private final FarmDay farmDay;
  private final Known layouts;
  private final Rafts rafts;
  private final Findings findings;

  EventReader(FarmDay farmDay, Parts parts, Rafts rafts, Findings findings) {
    this.farmDay = farmDay;
    this.layouts = parts.layoutNames();
    this.rafts = rafts;
    this.findings = findings;
  }

  /** Returns the sound rows in the order of time, then of lines. */
  List<Event> read(CsvTable table) {
    rafts.miss(table);
    return LogReader.rows(table, findings, this::event).stream()
        .sorted(Comparator.comparing((Event e) -> e.at().toInstant()).thenComparing(Event::line))
        .toList();
  }

  private Optional<Event> event(Cells cells) {
    Optional<Event> event = soundEvent(cells);
    event.ifPresentOrElse(
        e -> rafts.name(e.target().rafts(), true),
        () -> {
          rafts.name(targetRafts(cells), false);
          rafts.doubt(List.of(cells.text("raft")));
        });
    return event;
  }

  private Optional<Event> soundEvent(Cells cells) {
    Optional<OffsetDateTime> at = CellNames.time(cells, "at", farmDay);
    cells.required("kind");
    Optional<Event.Kind> kind = cells.choice("kind", Event.Kind.values());
    String raft = CellNames.required(cells, "raft");
    List<SiteId> sites = List.copyOf(CellNames.sites(cells, "site"));
    Event.Target target = target(cells);
    kind.ifPresent(k -> checkTarget(cells, k, target));
    return cells.sound()
        ? Optional.of(
            new Event(
                cells.line(),
                at.orElseThrow(),
                kind.orElseThrow(),
                raft,
                sites,
                target,
                cells.text("by"),
                cells.text("note")))
        : Optional.empty();
  }

  private Event.Target target(Cells cells) {
    List<String> targets = targetRafts(cells);
    for (String raft : targets) {
      CellNames.check(cells, "to_raft", raft);
    }
    String layout = cells.text("to_layout");
    if (!layout.isEmpty() && layouts.lacks(layout)) {
      cells.unknown("to_layout", layout, layouts.names());
    }
    List<SiteId> sites = List.copyOf(CellNames.sites(cells, "to_site"));
    return new Event.Target(targets, sites, layout);
  }

  private static List<String> targetRafts(Cells cells) {
    return Arrays.stream(cells.text("to_raft").split(";", -1))
        .map(String::strip)
        .filter(name -> !name.isEmpty())
        .toList();
  }

  private static void checkTarget(Cells cells, Event.Kind kind, Event.Target target) {
    boolean moves = kind == Event.Kind.MOVED;
    if (moves && target.rafts().isEmpty() && target.sites().isEmpty() && cells.sound()) {
      cells.error("to_raft", "moved does not say where to", "fill in to_raft, to_site or both");
    }
    if (!moves && !target.equals(Event.Target.none())) {
      cells.error(
          target.rafts().isEmpty() ? "to_site" : "to_raft",
          "only moved has a target",
          "leave to_raft, to_site and to_layout blank, or write moved");
    }
  }
}
