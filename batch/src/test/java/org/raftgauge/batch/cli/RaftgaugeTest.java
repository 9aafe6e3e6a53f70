// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.core.problem.Problem;

class RaftgaugeTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final HandMadeWorkplace workplace =
      new HandMadeWorkplace(new HandMadeFarm("R1", "R2"), new HandMadeMeasurer("s"));

  @BeforeEach
  void writePhotos() throws IOException {
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
    photo("a.txt", "rafts=R1 area=10 at=2026-04-11T18:00:00+01:00");
  }

  @Test
  void aRunPublishesTablesAndPicturesAndSaysWhere() throws IOException {
    int code = run("run", path("photos"), "--book", path("book"), "--out", path("out"));

    assertEquals(0, code, text(err));
    assertEquals(
        List.of("overlays/a.jpg", "photos.csv", "rafts.csv", "run.json", "sites.csv"),
        files(folder.resolve("out")));
    assertEquals(
        List.of(
            "Evening  2026-04-11",
            "Photos   1 used",
            "Rafts    1 measured, 3 sites, 0.00 m2 of leaf",
            "Missing  1 expected, not photographed: R2",
            "Results  " + folder.resolve("out")),
        text(out).lines().toList());
    assertEquals("Measuring 1 photo", text(err).lines().findFirst().orElse(""));
  }

  @Test
  void everyProblemOfTheBookIsALineAndNothingIsWritten() throws IOException {
    workplace.wrong(new Problem("layouts.yaml:3:5 pitch_x_mm", "found \"12,5\"", "write 12.5"));
    workplace.wrong(new Problem("crops.yaml:9:1 colour", "unknown key", "use colour_model"));

    int code = run("run", path("photos"), "--book", path("book"), "--out", path("out"));

    assertEquals(2, code);
    assertEquals(
        List.of(
            "layouts.yaml:3:5 pitch_x_mm: found \"12,5\"; write 12.5",
            "crops.yaml:9:1 colour: unknown key; use colour_model"),
        text(err).lines().toList());
    assertFalse(Files.exists(folder.resolve("out")));
    assertEquals(List.of(), files(folder.resolve("book")));
  }

  private int run(String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    return Raftgauge.run(args, workplace, console);
  }

  private void photo(String name, String text) throws IOException {
    Path file = folder.resolve("photos").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  private static List<String> files(Path folder) throws IOException {
    try (var walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }
}
