// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/** Compares the names of a manifest with those of a book. */
final class ManifestNames {
  private final CropBook book;
  private final Known rafts;
  private final List<Problem> problems = new ArrayList<>();

  ManifestNames(BookReading reading) {
    this.book = reading.book();
    this.rafts = reading.rafts();
  }

  List<Problem> problems(Manifest manifest) {
    manifest.rows().values().forEach(this::check);
    return problems;
  }

  private void check(ManifestRow row) {
    row.station().ifPresent(name -> checkStation(row, name));
    row.slot().ifPresent(name -> checkSlot(row, name));
    row.raft()
        .filter(rafts::lacks)
        .filter(ManifestNames::isName)
        .ifPresent(name -> unknown(row, "raft", name, rafts.names()));
  }

  private void checkStation(ManifestRow row, String name) {
    if (book.station(name).isEmpty() && isName(name)) {
      Optional<Problem> why = book.whyBroken("station", name);
      if (why.isEmpty()) {
        unknown(row, "station", name, List.copyOf(book.stations().keySet()));
      }
    }
  }

  /** A slot is of the row's station or, where the row names none, of any station of the book. */
  private void checkSlot(ManifestRow row, String name) {
    boolean unread = row.station().isPresent() && row.station().flatMap(book::station).isEmpty();
    List<String> slots =
        book.stations().values().stream()
            .filter(
                station -> row.station().isEmpty() || row.station().get().equals(station.name()))
            .flatMap(station -> station.slots().stream().map(Slot::name))
            .distinct()
            .toList();
    if (!unread && !slots.contains(name) && isName(name)) {
      unknown(row, "slot", name, slots);
    }
  }

  /** Says whether a text is a name at all; one that is not is a problem already. */
  private static boolean isName(String text) {
    return Names.check(text, (found, remedy) -> {});
  }

  private void unknown(ManifestRow row, String column, String name, List<String> known) {
    problems.add(
        new Problem(
            "manifest.csv:" + row.line() + ": column " + column,
            "\"" + name + "\" is unknown",
            NearestSpelling.remedy(name, known)));
  }
}
