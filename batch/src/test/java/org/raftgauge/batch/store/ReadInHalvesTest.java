// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.measure.PhotoFacts;

/** A large farm's photos are read by two connections at once. */
class ReadInHalvesTest {
  private static final List<LocalDate> DAYS =
      List.of(LocalDate.of(2026, 4, 10), LocalDate.of(2026, 4, 12));

  @TempDir private Path folder;

  @Test
  void bothHalvesTogetherAreWhatOneConnectionReads() throws IOException {
    Path file = folder.resolve("history.db");
    try (History history = History.open(file)) {
      history.save(photos());
    }
    try (Database database = Database.open(file, Steps.NONE)) {
      List<Kept> whole = database.within(c -> ReadMeasures.byDays(c, DAYS, List.of("", "g")));
      List<List<Kept>> halves =
          database.alongside(
              c -> ReadMeasures.byDays(c, DAYS, List.of("", "8")),
              c -> ReadMeasures.byDays(c, DAYS, List.of("8", "g")));
      // 3 of the 5 days that the photos are of.
      assertEquals(24, whole.size());
      assertFalse(halves.get(0).isEmpty() || halves.get(1).isEmpty());
      assertEquals(whole, halves.stream().flatMap(List::stream).toList());
    }
  }

  @Test
  void aStationsPhotosComeInTheOrderOfTimeWhoeverReadThem() throws IOException {
    Path file = folder.resolve("history.db");
    try (History history = History.open(file)) {
      history.save(photos());
    }
    try (Database database = Database.open(file, Steps.NONE)) {
      Corrections none = Corrections.of(List.of(), Instant.MAX);
      List<List<StationPast.Dated>> halves =
          database.alongside(
              c -> StationPast.read(c, "bench", none, List.of("", "8")),
              c -> StationPast.read(c, "bench", none, List.of("8", "g")));
      List<StationPast.Photo> whole =
          StationPast.inOrder(
              database.within(c -> StationPast.read(c, "bench", none, List.of("", "g"))));
      List<OffsetDateTime> times = whole.stream().map(StationPast.Photo::takenAt).toList();
      assertEquals(40, whole.size());
      assertEquals(times.stream().sorted().toList(), times);
      assertFalse(halves.get(0).isEmpty() || halves.get(1).isEmpty());
      assertEquals(whole, StationPast.inOrder(halves.stream().flatMap(List::stream).toList()));
    }
  }

  @Test
  void whatTheSecondConnectionCannotReadIsSaidAsTheFirstsIs() throws IOException {
    try (Database database = Database.open(folder.resolve("history.db"), Steps.NONE)) {
      IOException e =
          assertThrows(
              IOException.class,
              () ->
                  database.alongside(
                      c -> 1,
                      c -> {
                        throw new SQLException("no such table: sites");
                      }));
      assertEquals(
          HistoryFault.text(folder.resolve("history.db"), new SQLException("no such table: sites")),
          e.getMessage());
    }
  }

  private static List<Kept> photos() {
    List<Kept> photos = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      String text = "rafts=R" + i + " at=2026-04-" + (9 + i % 5) + "T18:00:00+01:00";
      text = text.replace("-04-9T", "-04-09T");
      photos.add(
          Kept.fresh(
              new HandMadeMeasurer("s")
                  .measure(text.getBytes(StandardCharsets.UTF_8), PhotoFacts.of(i + ".jpg"))
                  .measure(),
              new Origin("settings", "run-0", "0.1", "c0de")));
    }
    return photos;
  }
}
