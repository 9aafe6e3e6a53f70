// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reads the book that the guide shows, block by block as printed. */
class CropBookGuideTest {
  private static final Path GUIDE = Path.of("../batch/CROP-BOOK.md");

  @TempDir Path folder;
  private String guide;

  @BeforeEach
  void readGuide() throws IOException {
    guide = Files.readString(GUIDE);
  }

  @Test
  void bookOfTheGuideReadsWithoutAProblem() {
    CropBook book = book().sound();
    assertEquals(Set.of("butterhead", "butterhead/red butterhead"), book.crops().keySet());
    assertEquals(2, book.layouts().get("deck-12").size());
    assertEquals("left", book.station("over-pond").orElseThrow().slots().get(0).name());
    assertEquals(200, book.station("photo-bench").orElseThrow().clockOffset().toSeconds());
    assertEquals(5, book.events().size());
  }

  @Test
  void respacingOfTheGuideFillsTheTwoNewRafts() {
    CropBook book = book().sound();
    // 18 sites, two died, one moved away: 15 plants onto boards of 12.
    assertEquals(12, sites(book, "DR-0501"));
    assertEquals(3, sites(book, "DR-0502"));
    assertTrue(book.expectedRafts(LocalDate.of(2026, 5, 7)).contains("DR-0501"));
    assertTrue(!book.expectedRafts(LocalDate.of(2026, 5, 8)).contains("DR-0501"));
  }

  @Test
  void everyEventKindIsExplained() {
    for (Event.Kind kind : Event.Kind.values()) {
      String word = "`" + kind.name().toLowerCase(java.util.Locale.ROOT) + "`";
      assertTrue(guide.contains("| " + word) || guide.contains(", " + word + " |"), word);
    }
  }

  @Test
  void everyColumnIsExplained() {
    for (var columns :
        List.of(
            PlantingReader.COLUMNS,
            PlacementReader.COLUMNS,
            EventReader.COLUMNS,
            LogReader.WEIGHINGS,
            LogReader.HARVESTS,
            LogReader.CALLS,
            LogReader.CLIMATE,
            LogReader.SEEN)) {
      columns.all().forEach(column -> assertTrue(guide.contains(column), column));
    }
  }

  private static int sites(CropBook book, String raft) {
    return book.plantingsOn(raft, LocalDate.of(2026, 4, 20)).stream()
        .mapToInt(p -> p.sites().size())
        .sum();
  }

  private BookFolder book() {
    String station = block("## stations/NAME.yaml", "yaml", 0);
    String slots = block("## stations/NAME.yaml", "yaml", 1);
    return BookFolder.in(folder)
        .with("book.yaml", block("## book.yaml", "yaml", 0))
        .with("layouts.yaml", block("## layouts.yaml", "yaml", 0))
        .with("crops.yaml", block("## crops.yaml", "yaml", 0))
        .without("stations/bench.yaml")
        .with("stations/photo-bench.yaml", station)
        .with("stations/over-pond.yaml", station.replace("passing", "fixed") + slots)
        .with("plantings.csv", block("## plantings.csv", "csv", 0))
        .with("placements.csv", block("## placements.csv", "csv", 0))
        .with("events.csv", block("## events.csv", "csv", 0));
  }

  private String block(String heading, String kind, int index) {
    String section = guide.substring(guide.indexOf("\n" + heading + "\n"));
    Matcher blocks = Pattern.compile("```" + kind + "\n(.*?)```", Pattern.DOTALL).matcher(section);
    for (int i = 0; i <= index; i++) {
      assertTrue(blocks.find(), heading + " has block " + index);
    }
    return blocks.group(1);
  }
}
