// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvTable;

/** Reads a crop book's folder, file by file, in the order in which the files need each other. */
final class BookReader {
  private final Path folder;
  private final Findings findings = new Findings();

  BookReader(Path folder) {
    this.folder = folder;
  }

  BookReading read() {
    Optional<YamlMap> top = YamlFile.read(folder.resolve("book.yaml"), "book.yaml", findings);
    if (top.isPresent() && !SettingsReader.formatIsKnown(top.get())) {
      return nothingOf(BookSettings.unread());
    }
    BookSettings settings = top.map(SettingsReader::read).orElse(BookSettings.unread());
    Parts parts = new PartsReader(folder, findings).read();
    top.ifPresent(map -> checkStation(map, settings, parts));
    Rafts rafts = new Rafts();
    List<PlantingRow> rows =
        new PlantingReader(parts, rafts, findings)
            .read(
                CsvTable.read(
                    folder.resolve("plantings.csv"), "plantings.csv", PlantingReader.COLUMNS));
    Diary diary = diary(settings.farmDay(), parts, rafts);
    Ledger.Outcome outcome =
        new Ledger(new LedgerInput(rows, parts.layouts(), settings.farmDay(), rafts, findings))
            .play(diary.events());
    Berths.check(outcome.tenures(), findings);
    new LogSites(outcome.tenures(), parts.layouts(), findings).check(diary);
    CropBook book =
        new CropBook(
            settings,
            parts.stations(),
            parts.layouts(),
            parts.crops(),
            rows.stream().map(PlantingRow::planting).toList(),
            diary,
            outcome.tenures(),
            outcome.plants(),
            parts.broken().byPart());
    return new BookReading(book, findings.list(), rafts.known());
  }

  private BookReading nothingOf(BookSettings settings) {
    CropBook book =
        new CropBook(
            settings,
            Map.of(),
            Map.of(),
            Map.of(),
            List.of(),
            Diary.empty(),
            List.of(),
            List.of(),
            Map.of());
    return new BookReading(book, findings.list(), new Known(List.of(), false));
  }

  private static void checkStation(YamlMap top, BookSettings settings, Parts parts) {
    settings
        .station()
        .filter(parts.stationNames()::lacks)
        .ifPresent(
            station ->
                top.value("station")
                    .orElseThrow()
                    .unknown("station", station, parts.stationNames().names()));
  }

  private Diary diary(FarmDay farmDay, Parts parts, Rafts rafts) {
    List<Event> events =
        new EventReader(farmDay, parts, rafts, findings)
            .read(optional("events.csv", EventReader.COLUMNS));
    LogReader log = new LogReader(farmDay, rafts, findings);
    return new Diary(
        new PlacementReader(parts, rafts.known(), findings)
            .read(optional("placements.csv", PlacementReader.COLUMNS)),
        events,
        log.weighings(optional("weighings.csv", LogReader.WEIGHINGS)),
        log.harvests(optional("harvests.csv", LogReader.HARVESTS)),
        log.calls(optional("calls.csv", LogReader.CALLS)),
        log.climate(optional("climate.csv", LogReader.CLIMATE)),
        log.seen(optional("seen.csv", LogReader.SEEN)));
  }

  /** Reads a file that may be absent. */
  private CsvTable optional(String name, Columns columns) {
    Path file = folder.resolve(name);
    return Files.exists(file)
        ? CsvTable.read(file, name, columns)
        : new CsvTable(name, List.of(), List.of(), List.of(), true);
  }
}
