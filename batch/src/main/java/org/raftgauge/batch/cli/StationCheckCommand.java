// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.batch.station.StationCheckText;
import org.raftgauge.batch.station.StationEvenings;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks stations against their own past. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Says whether a book's stations are as they were, evening by evening.",
    description = {
      "%nReads what runs have kept in the book's history: blur, haze and dirt, exposure,",
      "strength, slope and colour of the light, camera height by the boards, fit of",
      "marks and edges, shift and turn of a fixed camera. Says what changed, since",
      "when, and what to do. Every run does the same by itself."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge station check --book my-farm"})
final class StationCheckCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions options;

  @Option(
      names = "--station",
      paramLabel = "STATION",
      description = "Only this station. Default: all of the book.")
  private String only;

  @Option(
      names = "--since",
      paramLabel = "DATE",
      description = {
        "Leave out evenings before this one, as 2026-03-08: after a camera was moved on"
            + " purpose, or a lens changed, the past tells nothing. Default: the last changed_on"
            + " of the station file."
      })
  private String since;

  StationCheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    BookReading reading = CropBook.read(book);
    CropBook read = reading.book();
    if (only != null) {
      NamedStation.of(reading, only);
    }
    Path history = book.resolve("history.db");
    if (!Files.exists(history)) {
      throw problem("BOOK " + book, "has no history yet", "measure photos first, by raftgauge run");
    }
    List<String> lines = lines(read, history, from());
    lines.forEach(console.out()::println);
    return ExitCode.DONE;
  }

  private List<String> lines(CropBook read, Path file, LocalDate from) throws IOException {
    List<String> lines = new ArrayList<>();
    try (History history = History.open(file)) {
      Measures measures = history.measures();
      for (Station station : read.stations().values()) {
        if (only == null || only.equals(station.name())) {
          lines.addAll(
              StationCheckText.lines(
                  station,
                  StationEvenings.of(
                      measures.stationPast(station.name()),
                      read.farmDay(),
                      since == null ? changed(station) : from)));
        }
      }
    }
    return lines;
  }

  private static LocalDate changed(Station station) {
    List<LocalDate> changes = station.changedOn();
    return changes.isEmpty() ? LocalDate.MIN : changes.get(changes.size() - 1);
  }

  private LocalDate from() throws InputException {
    try {
      return since == null ? LocalDate.MIN : LocalDate.parse(since);
    } catch (DateTimeParseException e) {
      throw problem("--since " + since, "is no date", "write it as 2026-03-08");
    }
  }

  private static InputException problem(String place, String found, String remedy) {
    return new InputException(List.of(new Problem(place, found, remedy)));
  }
}
