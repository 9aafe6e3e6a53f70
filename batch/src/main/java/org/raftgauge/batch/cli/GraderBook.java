// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/** Opens a crop book for the grader commands. */
final class GraderBook {

  private GraderBook() {}

  /** Reads a book; its problems are said, those of its settings or weighings stop. */
  static CropBook open(Path folder, Console console) throws InputException {
    Folders.exists("BOOK", folder, "give the folder that holds book.yaml");
    BookReading reading = CropBook.read(folder);
    boolean stops =
        reading.problems().stream()
            .anyMatch(
                p ->
                    p.isError()
                        && (p.place().startsWith("book.yaml")
                            || p.place().startsWith("weighings.csv")));
    if (stops) {
      throw new InputException(reading.problems());
    }
    reading.problems().forEach(console.err()::println);
    return reading.book();
  }

  /** Checks that plantings know a crop. */
  static void hasCrop(CropBook book, String crop) throws InputException {
    List<String> crops = book.plantings().stream().map(p -> p.crop()).distinct().sorted().toList();
    if (!crops.contains(crop)) {
      throw new InputException(
          List.of(
              new Problem(
                  "--crop",
                  "no planting of crop \"" + crop + "\"",
                  NearestSpelling.remedy(crop, crops))));
    }
  }

  /** Reads a time on the farm's clock. */
  static Optional<OffsetDateTime> time(CropBook book, String option, String text)
      throws InputException {
    if (text == null) {
      return Optional.empty();
    }
    Optional<OffsetDateTime> time = book.farmDay().parseTime(text);
    if (time.isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  option,
                  "\"" + text + "\" is not a time",
                  "write it as 2026-04-16T08:00, on the farm's clock")));
    }
    return time;
  }
}
