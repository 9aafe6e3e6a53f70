// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeProgram;

/** Kills runs in the middle: 20 quick photos, then one that takes a minute. */
class KilledRunTest {
  @TempDir private Path folder;

  @BeforeEach
  void writePhotos() throws IOException {
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
    for (int i = 10; i < 30; i++) {
      String picture = i < 26 ? " nopicture=1" : "";
      photo(
          "p" + i + ".txt",
          "rafts=R1 area=" + i + " at=2026-04-11T18:" + i + ":00+01:00" + picture);
    }
    photo("q.txt", "slow=1 rafts=R2 at=2026-04-11T18:00:00+01:00");
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a process cannot be asked to end there")
  void aRunThatIsAskedToEndLeavesNoHalfFolder() throws Exception {
    Process run = start();
    waitForPhotos(16);

    run.destroy();

    assertTrue(run.waitFor(30, TimeUnit.SECONDS));
    assertEquals(List.of("book", "log", "photos"), names(folder));
  }

  @Test
  void aKilledRunCanBeRunAgainAndDoublesNothing() throws Exception {
    Process run = start();
    waitForPhotos(16);

    run.destroyForcibly();

    assertTrue(run.waitFor(30, TimeUnit.SECONDS));
    assertFalse(Files.exists(folder.resolve("out")));
    photo("q.txt", "rafts=R2 at=2026-04-11T18:00:00+01:00");
    assertTrue(start().waitFor(60, TimeUnit.SECONDS));
    assertEquals(List.of("book", "log", "out", "photos"), names(folder));
    assertEquals(21, photosInHistory());
    List<String> photos = Files.readAllLines(folder.resolve("out/photos.csv"));
    // 20 photos of R1, of equal quality: the last taken counts; it was not among the first 16.
    assertEquals(19, photos.stream().filter(l -> l.contains(",replaced,")).count());
    assertEquals(2, photos.stream().filter(l -> l.contains(",used,")).count());
    assertTrue(photos.stream().anyMatch(l -> l.startsWith("p29.txt,") && l.contains(",used,")));
  }

  private Process start() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.awt.headless=true",
            "-cp",
            System.getProperty("java.class.path"),
            HandMadeProgram.class.getName(),
            "run",
            folder.resolve("photos").toString(),
            "--book",
            folder.resolve("book").toString(),
            "--out",
            folder.resolve("out").toString(),
            "--workers",
            "1")
        .redirectErrorStream(true)
        .redirectOutput(new File(folder.toFile(), "log"))
        .start();
  }

  private void waitForPhotos(int photos) throws Exception {
    for (int i = 0; i < 300; i++) {
      if (Files.exists(folder.resolve("book/history.db")) && photosInHistory() >= photos) {
        return;
      }
      Thread.sleep(100);
    }
    throw new AssertionError(Files.readString(folder.resolve("log")));
  }

  private int photosInHistory() throws SQLException {
    String url = "jdbc:sqlite:" + folder.resolve("book/history.db");
    try (var database = DriverManager.getConnection(url);
        var statement = database.createStatement();
        var tables =
            statement.executeQuery("SELECT count(*) FROM sqlite_master WHERE name = 'photos'")) {
      if (tables.getInt(1) == 0) {
        return 0;
      }
      try (var row = statement.executeQuery("SELECT count(*) FROM photos")) {
        return row.getInt(1);
      }
    }
  }

  private void photo(String name, String text) throws IOException {
    Files.writeString(folder.resolve("photos").resolve(name), text);
  }

  private static List<String> names(Path folder) throws IOException {
    try (var list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
