// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Reads the crop book of the photoreal raft photos, which someone else wrote. */
class SharedBookTest {

  @Test
  void bookThatSomeoneElseWroteReadsWithoutAProblem() {
    BookReading reading = CropBook.read(folder());

    assertEquals(List.of(), reading.problems());
    CropBook book = reading.book();
    assertEquals("Europe/Lisbon", book.zone().getId());
    assertEquals(Set.of("photo-bench"), book.stations().keySet());
    assertEquals(Set.of("basil", "butterhead", "redleaf"), book.crops().keySet());
    // Values as they stand in the files.
    assertEquals(2253.521126760563, book.station("photo-bench").orElseThrow().lens().fxPx());
    assertEquals(new HeightModel(1.5251, 0.5706, 0.5), book.crops().get("redleaf").heightModel());
    assertEquals(
        Optional.of(new Harvest(150, 120, 0.9, 22, 30, 0, OptionalDouble.empty())),
        book.crops().get("basil").harvest());
  }

  @Test
  void allSixRaftsOfItAreExpectedFromTheDayOfTransplanting() {
    CropBook book = CropBook.read(folder()).book();

    assertTrue(book.expectedRafts(LocalDate.of(2026, 4, 5)).isEmpty());
    assertEquals(
        Set.of("DR-0401", "DR-0402", "DR-0403", "DR-0801", "DR-0803", "DR-0806"),
        book.expectedRafts(LocalDate.of(2026, 4, 6)));
    // Six boards of 6 x 3 sites.
    assertEquals(108, book.plants().size());
    assertEquals("DR-0401/A1/2026-04-06", book.plants().get(0).plant());
  }

  private static Path folder() {
    Path shared =
        Optional.ofNullable(System.getProperty("raftgauge.shared"))
            .map(Path::of)
            .orElseGet(SharedBookTest::nearestShared);
    Path folder = shared.resolve("data/path-traced/book");
    Assumptions.assumeTrue(
        Files.isDirectory(folder), "skipped: there is no shared/data/path-traced/book");
    return folder;
  }

  private static Path nearestShared() {
    Path start = Path.of(System.getProperty("user.dir")).toAbsolutePath();
    for (Path at = start; at != null; at = at.getParent()) {
      if (Files.isDirectory(at.resolve("shared/data"))) {
        return at.resolve("shared");
      }
    }
    return start.resolve("shared");
  }
}
