// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.raftgauge.batch.begin.Beginning;
import org.raftgauge.batch.begin.WriteBook;
import org.raftgauge.batch.run.BookMeasurer;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.problem.InputException;

/**
 * Measures a bundled photo before the first one comes: by then the libraries are loaded and what a
 * photo takes is compiled, so that the first word comes as soon as the later ones.
 */
final class WarmUp {
  private static final String PHOTO = "2026-03-06_KV-112.jpg";

  private WarmUp() {}

  /** Measures it beside the watch; where that fails, the first photo takes longer. */
  static void inBackground() {
    Thread thread =
        new Thread(
            () -> {
              try {
                measure();
              } catch (InputException | IOException | RuntimeException cold) {
                // The watch goes on; a photo of its own would say what is wrong.
              }
            },
            "warm up");
    thread.setDaemon(true);
    thread.start();
  }

  /** Measures the bundled photo by a book of its own, which leaves nothing behind. */
  static PhotoMeasure measure() throws InputException, IOException {
    Path folder = Files.createTempDirectory("raftgauge-warm-up");
    try (InputStream photo = WarmUp.class.getResourceAsStream("warm-up.jpg")) {
      Path book = folder.resolve("book");
      WriteBook.write(beginning(), book);
      return new BookMeasurer(CropBook.read(book).book())
          .measure(photo.readAllBytes(), Optional.empty(), PhotoFacts.of(PHOTO))
          .measure();
    } finally {
      delete(folder);
    }
  }

  /** The board and camera of the sample photo. */
  private static Beginning beginning() {
    return new Beginning(
        ZoneOffset.UTC,
        Units.METRIC,
        new Beginning.Holes(620, 840, 5, 4, 145, 145),
        new Beginning.Camera(Station.Kind.PASSING, 1280, 1200, 1500, OptionalDouble.of(984)),
        new Beginning.First(
            List.of("KV-112"), "N", "butterhead", "green-leaf", LocalDate.of(2026, 3, 2)));
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path path : walk.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
