// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.measure.RaftMeasure;

/** Histories that earlier programs left, frozen as SQL, brought to the version of now. */
class OldHistoryTest {
  private static final String SHA = "ab".repeat(32);

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5})
  void everyOlderVersionIsBroughtUpWithAllThatItHeld(int version) throws Exception {
    Path file = old(version);

    try (History history = History.open(file)) {
      Kept kept = history.find(SHA).orElseThrow();
      RaftMeasure raft = kept.measure().rafts().get(0);
      assertEquals("a.jpg", kept.measure().photo());
      assertEquals(List.of("A1", "A2"), raft.sites().stream().map(s -> "" + s.site()).toList());
      assertEquals(OptionalDouble.of(10.125), raft.sites().get(0).projectedAreaCm2());
      assertEquals(version > 1 ? List.of("the camera has moved") : List.of(), raft.notes());
      assertEquals(List.of(), raft.borders());
      assertEquals(
          version > 2 ? OptionalDouble.of(0.0125) : OptionalDouble.empty(),
          kept.measure().witness().hazeFraction());
      // The program's version is taken from the run that measured it; its code is not known.
      assertEquals(new Origin("s", "r-1", "0.0.9", ""), kept.origin());
      assertEquals(Path.of("/crops/runs/2026-04-11"), history.folderOf("r-1").orElseThrow());
      assertEquals(List.of(), history.corrections());
      assertEquals(List.of(), history.check().damage());
    }
    assertEquals(Schema.VERSION, versionOf(file));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5})
  void aCopyOfTheOlderVersionIsKept(int version) throws Exception {
    History.open(old(version)).close();

    Path copy = folder.resolve("backups/history-schema-" + version + ".db");
    assertEquals(version, versionOf(copy));
    assertEquals(List.of(), Backups.check(copy));
  }

  @Test
  void whereNoCopyCanBeMadeTheOldFileStaysAsItIs() throws Exception {
    Path file = old(3);
    byte[] before = Files.readAllBytes(file);
    Files.writeString(folder.resolve("backups"), "a file where the folder should be");

    assertThrows(IOException.class, () -> History.open(file));

    assertTrue(java.util.Arrays.equals(before, Files.readAllBytes(file)));
  }

  @Test
  void aStopBeforeTheCopyLeavesTheOldFile() throws Exception {
    Path file = old(2);

    IOException e =
        assertThrows(
            IOException.class,
            () ->
                History.open(
                    file,
                    step -> {
                      throw new IOException("stopped before " + step);
                    }));

    assertEquals(file + ": stopped before COPY_OLD_HISTORY", e.getMessage());
    assertEquals(2, versionOf(file));
  }

  @Test
  void aNewFileNeedsNoCopy() throws IOException {
    History.open(folder.resolve("history.db")).close();

    assertFalse(Files.exists(folder.resolve("backups")));
  }

  private Path old(int version) throws IOException, SQLException {
    Path file = folder.resolve("history.db");
    try (InputStream in = getClass().getResourceAsStream("old-history-" + version + ".sql");
        Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
        var statement = database.createStatement()) {
      String sql = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      for (String part : sql.replaceAll("--[^\n]*", "").split(";\n", -1)) {
        if (!part.isBlank()) {
          statement.execute(part);
        }
      }
    }
    return file;
  }

  private static int versionOf(Path file) throws SQLException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      return Schema.version(database);
    }
  }
}
