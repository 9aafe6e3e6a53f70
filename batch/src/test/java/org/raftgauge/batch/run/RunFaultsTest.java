// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.batch.fixture.SilentProgress;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Step;
import org.raftgauge.batch.store.Steps;
import org.raftgauge.core.problem.InputException;

/** Runs on disks that refuse a step, over folders that vanish, and on clocks that jump. */
class RunFaultsTest {
  private static final String EVENING = " at=2026-04-11T18:00:00+01:00";

  @TempDir private Path folder;

  private final HandMadeFarm farm = new HandMadeFarm("R1", "R2", "R3");
  private final HandMadeMeasurer measurer = new HandMadeMeasurer("s");
  private OffsetDateTime startedAt = OffsetDateTime.parse("2026-04-12T07:00:00+01:00");
  private int runs;

  @BeforeEach
  void makeFolders() throws IOException {
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
    for (int i = 0; i < 3; i++) {
      photo("p" + i + ".txt", "rafts=R" + (i + 1) + " area=" + (10 + i) + EVENING);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"SAVE_MEASURES", "SYNC_FILE", "SYNC_FOLDER", "SETTLE", "MOVE_INTO_PLACE"})
  void aDiskThatRefusesAStepPublishesNothingAndAPlainRunMakesItGood(Step step) throws Exception {
    IOException e = assertThrows(IOException.class, () -> run(full(step)));

    assertEquals("No space left on device", e.getMessage());
    assertFalse(Files.exists(folder.resolve("out")));
    run(Steps.NONE);
    assertWhole();
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"SAVE_MEASURES", "SYNC_FILE", "SETTLE", "MOVE_EARLIER_ASIDE", "MOVE_INTO_PLACE"})
  void theResultsOfAnEarlierRunStayWhereTheNextFails(Step step) throws Exception {
    run(Steps.NONE);
    Map<String, String> before = files("out");
    photo("p9.txt", "rafts=R1 area=99 quality=0.99" + EVENING);

    assertThrows(IOException.class, () -> run(full(step)));

    assertEquals(before, files("out"));
    assertEquals(List.of("book", "out", "photos"), names(folder));
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"WRITE_BACKUP", "MOVE_BACKUP"})
  void aBackupThatCannotBeWrittenIsANoteAndNoFailure(Step step) throws Exception {
    RunSummary summary = run(full(step));

    assertEquals(
        List.of("the history could not be backed up: No space left on device"), summary.notes());
    assertWhole();
  }

  @Test
  void aRunThatPublishesBacksTheHistoryUp() throws Exception {
    run(Steps.NONE);

    assertEquals(List.of("history-2026-04-12.db"), names(folder.resolve("book/backups")));
  }

  @Test
  void aRunWhoseFolderStandsThoughItWasKilledBeforeItSaidSoIsNoted() throws Exception {
    assertThrows(IOException.class, () -> run(full(Step.NOTE_PUBLISHED)));
    String stands = files("out").get("run.json");
    String id = stands.replaceFirst("(?s).*\"run\": \"([^\"]+)\".*", "$1");
    try (History history = History.open(folder.resolve("book/history.db"))) {
      assertEquals(1, history.unpublished().size());
      assertEquals(id, history.unpublished().get(0).run());
    }

    // Stopped before it publishes again, so that the folder of the first still stands.
    assertThrows(IOException.class, () -> run(full(Step.SETTLE)));

    try (History history = History.open(folder.resolve("book/history.db"))) {
      assertEquals(List.of(), history.unpublished());
      assertEquals(Optional.of(folder.resolve("out")), history.folderOf(id));
    }
  }

  @Test
  void aPhotoFolderThatVanishesStopsTheRunAndKeepsWhatWasMeasured() throws Exception {
    FoundPhotos found = HandMadeWorkplace.find(folder.resolve("photos"));
    run(Steps.NONE);
    Files.move(folder.resolve("photos"), folder.resolve("card"));

    IOException e = assertThrows(IOException.class, () -> run(Steps.NONE, found));

    assertEquals(
        "the photo folder "
            + folder.resolve("photos")
            + " is not there any more; put the card or drive back and run again: what was measured"
            + " so far is kept",
        e.getMessage());
    Files.move(folder.resolve("card"), folder.resolve("photos"));
    run(Steps.NONE);
    assertWhole();
    assertEquals(3, measurer.calls(), "each photo is measured once");
  }

  @Test
  void aClockThatWasSetBackIsSaid() throws Exception {
    run(Steps.NONE);
    startedAt = OffsetDateTime.parse("2025-01-01T00:00:00Z");

    RunSummary summary = run(Steps.NONE);

    assertTrue(
        summary
            .notes()
            .get(0)
            .startsWith(
                "this computer's clock says 2025-01-01T00:00Z, which is before the last run"
                    + " (2026-04-12T06:00Z); set the clock"),
        summary.notes().toString());
    assertWhole();
  }

  @Test
  void aRunObeysCorrectionsAndSaysSoWhereTheyShow() throws Exception {
    run(Steps.NONE);
    try (History history = History.open(folder.resolve("book/history.db"))) {
      var photo = history.named("p0.txt").get(0).measure();
      var other = history.named("p1.txt").get(0).measure();
      Correction.Entry entry =
          new Correction.Entry(OffsetDateTime.parse("2026-04-12T08:00:00+01:00"), "Ana", "hand");
      history.correct(
          List.of(
              new Correction(
                  0, entry, new Correction.Exclude(new Correction.Photo(photo.sha256(), "p0.txt"))),
              new Correction(
                  0,
                  entry,
                  new Correction.Move(
                      new Correction.Photo(other.sha256(), "p1.txt"), "R2", "R1"))));
    }

    RunSummary summary = run(Steps.NONE);

    assertEquals(2, summary.corrections().size());
    String photos = text("out/photos.csv");
    assertTrue(
        photos.contains(
            ",skipped,\"correction 1 (2026-04-12, Ana) excludes p0.txt: hand\",to take that back:"
                + " raftgauge amend undo 1,"),
        photos);
    String rafts = text("out/rafts.csv");
    assertTrue(
        rafts
            .lines()
            .anyMatch(l -> l.startsWith("p1.txt,bench,,R1,") || l.startsWith("p1.txt,bench,R1,")),
        rafts);
    assertTrue(rafts.contains("correction 2 (2026-04-12, Ana) moves raft R2 on p1.txt to raft R1"));
    assertFalse(text("out/sites.csv").contains("p0.txt"));
    assertTrue(text("out/run.json").contains("correction 1 (2026-04-12, Ana) excludes p0.txt"));
    assertEquals(List.of("R2"), List.copyOf(summary.notPhotographed()));
  }

  private void assertWhole() throws IOException {
    assertTrue(text("out/photos.csv").lines().count() == 4, text("out/photos.csv"));
    try (History history = History.open(folder.resolve("book/history.db"))) {
      assertEquals(List.of(), history.check().damage());
      assertEquals(3, history.check().rows().get("photos"));
      assertEquals(12, history.check().rows().get("sites"));
    }
    String json = text("out/run.json");
    for (String file : files("out").keySet()) {
      assertTrue(file.equals("run.json") || json.contains("\"" + file + "\""), file);
    }
    assertEquals(List.of("book", "out", "photos"), names(folder));
  }

  private static Steps full(Step step) {
    return next -> {
      if (next == step) {
        throw new IOException("No space left on device");
      }
    };
  }

  private RunSummary run(Steps steps) throws InputException, IOException {
    return run(steps, HandMadeWorkplace.find(folder.resolve("photos")));
  }

  private RunSummary run(Steps steps, FoundPhotos found) throws InputException, IOException {
    RunPictures pictures = new RunPictures(farm, EnumSet.noneOf(RunPictures.Kind.class));
    Tools tools =
        new Tools(
            farm,
            measurer,
            pictures,
            new SilentProgress(),
            ReportPage.NONE,
            ForecastSource.NONE,
            steps);
    RunRequest request =
        new RunRequest(
            folder.resolve("photos"),
            folder.resolve("book"),
            Optional.of(folder.resolve("out")),
            2,
            Duration.ofMillis(50),
            startedAt.plusNanos(++runs));
    return RunFolder.run(request, found, tools);
  }

  private void photo(String name, String text) throws IOException {
    Files.writeString(folder.resolve("photos").resolve(name), text);
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private Map<String, String> files(String name) throws IOException {
    Path root = folder.resolve(name);
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        files.put(
            root.relativize(file).toString().replace('\\', '/'),
            new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1));
      }
    }
    return files;
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
