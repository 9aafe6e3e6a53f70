// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.TextPhotos;
import org.raftgauge.core.measure.PhotoMeasure;

class ExportHistoryTest {
  /** What CSV, spreadsheets and other scripts could stumble over. */
  private static final List<String> NAMES =
      List.of(
          "=cmd()|'x'!A1.jpg",
          "'=1.jpg",
          "''=1.jpg",
          "a,b;\"c\".jpg",
          "line\nbreak\r\n.jpg",
          " leading and trailing .jpg ",
          "\u6c34\u8015/\ud83c\udf31.jpg",
          "-1.jpg",
          "\t.jpg");

  @TempDir private Path folder;

  @BeforeEach
  void fill() throws IOException {
    try (History history = History.open(folder.resolve("history.db"))) {
      for (int i = 0; i < NAMES.size(); i++) {
        Kept kept = TextPhotos.kept(NAMES.get(i), 11, "rafts=R" + i + " area=" + (i + 1) / 3.0);
        history.save(List.of(kept));
        PhotoMeasure again = kept.measure();
        history.save(List.of(new Kept(again, TextPhotos.origin("v2"), Optional.empty())));
      }
      Kept unnamed = TextPhotos.kept("u.jpg", 12, "rafts=? area=0.1");
      history.save(List.of(unnamed));
      Correction.Photo photo = new Correction.Photo(unnamed.measure().sha256(), "u.jpg");
      Correction.Entry entry =
          new Correction.Entry(
              OffsetDateTime.parse("2026-04-12T08:00:00+01:00"), "", "@reason,\n\"two\" lines");
      history.correct(
          List.of(
              new Correction(0, entry, new Correction.Move(photo, "", "R1")),
              new Correction(0, entry, new Correction.Undo(1))));
      history.settle(
          List.of(new Settled(unnamed.measure(), List.of())),
          new RunRecord("run-1", entry.at(), "0.1", 1, List.of(unnamed.measure().sha256())),
          folder.resolve("out"));
    }
  }

  @Test
  void exportedImportedAndExportedAgainGivesTheSameBytes() throws IOException {
    Map<String, String> first = export(folder.resolve("history.db"), "one");
    Path copy = folder.resolve("copy/history.db");
    Files.createDirectories(copy.getParent());

    ImportHistory.into(copy, folder.resolve("one"));

    assertEquals(first, export(copy, "two"));
    assertEquals(9, first.size(), "eight tables and their list");
    assertEquals(List.of("history.db"), list(copy.getParent()));
    try (History history = History.open(copy)) {
      for (String name : NAMES) {
        assertEquals(name, history.named(name).get(0).measure().photo());
      }
      assertEquals(2, history.corrections().size());
      assertEquals(4 * NAMES.size(), history.remeasured().size(), "four sites of each photo");
    }
  }

  @Test
  void everyDigitOfANumberIsWritten() throws IOException {
    Map<String, String> files = export(folder.resolve("history.db"), "one");

    // 2 / 3 as the nearest double prints: Java's Double.toString.
    assertTrue(files.get("sites.csv").contains(",0.6666666666666666,"), files.get("sites.csv"));
  }

  @Test
  void aFileThatIsNotAsExportedIsRefusedAndNothingIsMade() throws IOException {
    export(folder.resolve("history.db"), "one");
    Path sites = folder.resolve("one/sites.csv");
    Files.writeString(sites, Files.readString(sites).replaceFirst("0\\.66", "0.67"));
    Path copy = folder.resolve("copy.db");

    IOException e =
        assertThrows(IOException.class, () -> ImportHistory.into(copy, folder.resolve("one")));

    assertEquals(
        sites + " is not as it was exported; copy it again, or export the history again",
        e.getMessage());
    assertFalse(Files.exists(copy));
  }

  @Test
  void aMissingFileIsNamed() throws IOException {
    export(folder.resolve("history.db"), "one");
    Files.delete(folder.resolve("one/rafts.csv"));

    IOException e =
        assertThrows(
            IOException.class,
            () -> ImportHistory.into(folder.resolve("copy.db"), folder.resolve("one")));

    assertEquals(
        folder.resolve("one/rafts.csv") + " is missing; export the history again", e.getMessage());
  }

  @Test
  void anExportOfANewerProgramIsRefused() throws IOException {
    export(folder.resolve("history.db"), "one");
    Path list = folder.resolve("one/tables.csv");
    Files.writeString(
        list, Files.readString(list).replaceAll("," + Schema.VERSION + "(\r\n)", ",99$1"));

    IOException e =
        assertThrows(
            IOException.class,
            () -> ImportHistory.into(folder.resolve("copy.db"), folder.resolve("one")));

    assertTrue(e.getMessage().contains("exported by a newer Raftgauge"), e.getMessage());
  }

  private Map<String, String> export(Path file, String name) throws IOException {
    Path to = Files.createDirectories(folder.resolve(name));
    try (History history = History.open(file)) {
      history.export(to);
    }
    Map<String, String> files = new TreeMap<>();
    for (String each : list(to)) {
      files.put(each, Files.readString(to.resolve(each)));
    }
    return files;
  }

  private static List<String> list(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
