// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/** Turns a book's pages back: the book as it could be known when an evening ended. */
public final class BookAsOf {
  private final CropBook book;
  private final LocalDate evening;
  private final Instant end;

  private BookAsOf(CropBook book, LocalDate evening) {
    this.book = book;
    this.evening = evening;
    this.end = book.farmDay().start(evening.plusDays(1));
  }

  /**
   * Returns a book without anything that came after an evening: events, weighings, harvests, calls,
   * climate, placements and plantings that begin later are left out, and what ended later has not
   * ended. Which plant stood where is worked out anew from what is left.
   *
   * <p>Stations, layouts, crops and settings have no date and stay; so do the worklist rows that
   * were seen, see {@link #seenBefore}.
   *
   * @param book the book
   * @param evening the farm's day
   * @return the book as of the end of that day
   */
  public static CropBook of(CropBook book, LocalDate evening) {
    return new BookAsOf(book, evening).book();
  }

  /**
   * Returns a book without what was said of worklist rows later. Like corrections of the history,
   * such rows speak of evenings before them: who asks what was known then leaves them out.
   *
   * @param book the book
   * @param end rows of this moment or later are left out; rows that do not say when stay
   * @return the same book otherwise
   */
  public static CropBook seenBefore(CropBook book, Instant end) {
    Diary diary = book.diary();
    List<SeenItem> seen =
        diary.seen().stream()
            .filter(row -> row.seenOn().map(book.farmDay()::start).map(end::isAfter).orElse(true))
            .toList();
    return new CropBook(
        book.settings(),
        book.stations(),
        book.layouts(),
        book.crops(),
        book.plantings(),
        diary.withSeen(seen),
        book.tenures(),
        book.plants(),
        book.broken());
  }

  private CropBook book() {
    List<PlantingRow> rows = plantings();
    Diary diary = diary(book.diary());
    Ledger.Outcome outcome =
        new Ledger(
                new LedgerInput(rows, book.layouts(), book.farmDay(), new Rafts(), new Findings()))
            .play(diary.events());
    return new CropBook(
        book.settings(),
        book.stations(),
        book.layouts(),
        book.crops(),
        rows.stream().map(PlantingRow::planting).toList(),
        diary,
        outcome.tenures(),
        outcome.plants(),
        book.broken());
  }

  private List<PlantingRow> plantings() {
    List<PlantingRow> rows = new ArrayList<>();
    for (Planting planting : book.plantings()) {
      if (!planting.startsOn().isAfter(evening)) {
        // The header is line 1; only the order of the lines is of matter.
        rows.add(new PlantingRow(rows.size() + 2, notYetEnded(planting)));
      }
    }
    return rows;
  }

  private Planting notYetEnded(Planting p) {
    return new Planting(
        p.raft(),
        p.pond(),
        p.berth(),
        p.crop(),
        p.variety(),
        p.layout(),
        p.sites(),
        p.sownOn(),
        p.transplantedOn(),
        p.harvestBy(),
        unlessLater(p.endedOn()),
        p.lot());
  }

  private Diary diary(Diary diary) {
    return new Diary(
        diary.placements().stream()
            .filter(p -> !p.from().isAfter(evening))
            .map(
                p ->
                    new Placement(
                        p.line(), p.station(), p.slot(), p.raft(), p.from(), unlessLater(p.to())))
            .toList(),
        diary.events().stream().filter(e -> e.at().toInstant().isBefore(end)).toList(),
        diary.weighings().stream().filter(w -> w.weighedAt().toInstant().isBefore(end)).toList(),
        diary.harvests().stream().filter(h -> h.harvestedAt().toInstant().isBefore(end)).toList(),
        diary.calls().stream().filter(c -> !c.calledOn().isAfter(evening)).toList(),
        diary.climate().stream().filter(c -> !c.date().isAfter(evening)).toList(),
        diary.seen());
  }

  private Optional<LocalDate> unlessLater(Optional<LocalDate> day) {
    return day.filter(d -> !d.isAfter(evening));
  }
}
