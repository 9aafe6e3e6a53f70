// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.TextPhotos;

class BackupsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 11);

  @TempDir private Path folder;

  @Test
  void theLatestThreeDaysAreKeptAndAnOlderVersionForGood() throws IOException {
    try (History history = open()) {
      Files.createDirectories(folder.resolve("backups"));
      Files.writeString(folder.resolve("backups/history-schema-3.db"), "old");
      for (int day = 0; day < 5; day++) {
        history.backUp(DAY.plusDays(day));
      }
    }

    assertEquals(
        List.of(
            "history-2026-04-13.db",
            "history-2026-04-14.db",
            "history-2026-04-15.db",
            "history-schema-3.db"),
        backups());
  }

  @Test
  void aClockSetBackDoesNotCostTheFreshBackup() throws IOException {
    try (History history = open()) {
      for (int year = 2030; year < 2034; year++) {
        history.backUp(DAY.withYear(year));
      }
      history.backUp(DAY);
    }

    assertEquals(
        List.of("history-2026-04-11.db", "history-2032-04-11.db", "history-2033-04-11.db"),
        backups());
  }

  @Test
  void aBackupIsAHistoryOfItsOwn() throws IOException {
    Kept kept = TextPhotos.kept("a.jpg", 11, "rafts=R1");
    Path copy;
    try (History history = open()) {
      history.save(List.of(kept));
      copy = history.backUp(DAY);
    }

    assertEquals(List.of(), Backups.check(copy));
    try (History history = History.open(copy)) {
      assertEquals(kept, history.find(kept.measure().sha256()).orElseThrow());
    }
  }

  @Test
  void aDamagedFileIsFoundBeforeAnythingIsMeasuredAndTheLatestBackupIsNamed() throws IOException {
    List<Kept> photos = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      photos.add(TextPhotos.kept("p" + i + ".jpg", 11, "rafts=R1 area=" + i));
    }
    Path copy;
    try (History history = open()) {
      history.save(photos);
      copy = history.backUp(DAY);
    }
    Path file = folder.resolve("history.db");
    try (RandomAccessFile damaged = new RandomAccessFile(file.toFile(), "rw")) {
      for (long page = 5; page < 15; page++) {
        damaged.seek(page * 4096);
        damaged.write(new byte[2048]);
      }
    }

    try (History history = open()) {
      IOException e = assertThrows(IOException.class, history::quickCheck);

      assertTrue(e.getMessage().startsWith(file + ": "), e.getMessage());
      assertTrue(e.getMessage().contains("the file is damaged"), e.getMessage());
      assertTrue(
          e.getMessage()
              .endsWith(
                  ": move it away, copy the backup "
                      + copy
                      + " to its place, and run again over the photos taken since"),
          e.getMessage());
    }
    assertEquals(List.of(), Backups.check(copy));
  }

  @Test
  void aWholeFileIsFoundWholeAndCounted() throws IOException {
    try (History history = open()) {
      history.save(List.of(TextPhotos.kept("a.jpg", 11, "rafts=R1;R2")));
      history.quickCheck();

      CheckHistory.Found found = history.check();
      assertEquals(List.of(), found.damage());
      assertEquals(1, found.rows().get("photos"));
      assertEquals(2, found.rows().get("rafts"));
      assertEquals(8, found.rows().get("sites"));
    }
  }

  @Test
  void aFailedBackupLeavesTheOneBefore() throws IOException {
    open().close();
    try (History history = History.open(folder.resolve("history.db"))) {
      history.backUp(DAY);
    }
    try (History history =
        History.open(
            folder.resolve("history.db"),
            step -> {
              if (step == Step.MOVE_BACKUP) {
                throw new IOException("No space left on device");
              }
            })) {
      assertThrows(IOException.class, () -> history.backUp(DAY));
    }

    assertEquals(List.of(), Backups.check(folder.resolve("backups/history-2026-04-11.db")));
  }

  private History open() throws IOException {
    return History.open(folder.resolve("history.db"));
  }

  private List<String> backups() throws IOException {
    try (Stream<Path> list = Files.list(folder.resolve("backups"))) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
