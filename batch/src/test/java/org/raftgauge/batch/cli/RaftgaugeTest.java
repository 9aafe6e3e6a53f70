// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
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
        List.of(
            "boards/a.0.jpg",
            "curves.csv",
            "overlays/a.jpg",
            "photos.csv",
            "ponds/pond.schema.json",
            "rafts.csv",
            "run.json",
            "sites.csv",
            "verdicts.csv",
            "worklist-a4.pdf",
            "worklist-letter.pdf",
            "worklist.csv"),
        files(folder.resolve("out")));
    assertEquals(
        List.of(
            "Evening  2026-04-11",
            "Photos   1 used",
            "Rafts    1 measured, 3 sites, 30 cm2 of leaf",
            "Missing  1 expected, not photographed: R2",
            "Verdicts none: no planted site was seen",
            "To do    nothing for tomorrow",
            "Results  " + folder.resolve("out")),
        text(out).lines().toList());
    assertEquals("Measuring 1 photo", text(err).lines().findFirst().orElse(""));
  }

  @Test
  void aRunThatMissedNoRaftSpeaksOfThoseThatItLookedFor() throws IOException {
    Files.writeString(
        folder.resolve("photos/b.txt"), "rafts=R2 area=9 at=2026-04-11T18:00:00+01:00");
    assertEquals(
        0, run("run", path("photos"), "--book", path("book"), "--out", path("out")), text(err));
    assertTrue(
        text(out).contains("Missing  no raft: each that the run looked for was photographed\n"),
        text(out));
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

  @Test
  void aWrongCallIsOneLineAndAHint() {
    assertEquals(2, run("run"));
    assertEquals(
        List.of("Missing required parameter: 'PHOTOS'", "See \"raftgauge run --help\"."),
        text(err).lines().toList());
  }

  @Test
  void unknownOptionsAndWrongNumbersAreWrongCalls() {
    assertEquals(2, run("run", path("photos"), "--book", path("book"), "--fast"));
    assertEquals("Unknown option: '--fast'", text(err).lines().findFirst().orElse(""));
    err.reset();
    assertEquals(2, run("run", path("photos"), "--book", path("book"), "--workers", "0"));
    assertEquals(
        "--workers and --quiet-after must be 1 or more and --wait 0 or more",
        text(err).lines().findFirst().orElse(""));
  }

  @Test
  void foldersThatAreNotThereAreNamed() throws IOException {
    Files.createDirectories(folder.resolve("bare"));

    assertEquals(2, run("run", path("none"), "--book", path("book")));
    assertEquals(2, run("run", path("photos"), "--book", path("photos/a.txt")));
    assertEquals(2, run("run", path("bare"), "--book", path("book")));

    assertEquals(
        List.of(
            "PHOTOS " + path("none") + ": does not exist; give the folder that holds the photos",
            "BOOK "
                + path("photos/a.txt")
                + ": is a file, not a folder; give the folder that holds book.yaml",
            "PHOTOS "
                + path("bare")
                + ": holds no photos; give the folder that holds the photos: JPEG, PNG or TIFF"),
        text(err).lines().toList());
  }

  @Test
  void aFailedCommandThatIsNoRunIsCalledByItsName() throws IOException {
    Files.writeString(folder.resolve("book/history.db"), "no database ".repeat(100));

    int code = run("amend", "list", "--book", path("book"));

    assertEquals(3, code);
    assertTrue(
        text(err).startsWith("raftgauge amend list failed: " + path("book/history.db")), text(err));
  }

  @Test
  void aRunThatFailsSaysSoWithoutAStackTrace() throws IOException {
    Files.writeString(folder.resolve("book/history.db"), "no database ".repeat(100));

    int code = run("run", path("photos"), "--book", path("book"), "--out", path("out"));

    assertEquals(3, code);
    assertTrue(
        text(err).startsWith("The run failed, nothing was published: " + path("book/history.db")),
        text(err));
    assertFalse(text(err).contains("\tat "), text(err));
    assertFalse(Files.exists(folder.resolve("out")));
    err.reset();
    run("run", path("photos"), "--book", path("book"), "--verbose");
    assertTrue(text(err).contains("\tat "), text(err));
  }

  @Test
  void photosToSeeToAreListedWithTheirRemedy() throws IOException {
    photo("b.txt", "status=refused reason=too_dark remedy=switch_on_the_light");

    int code = run("run", path("photos"), "--book", path("book"), "--out", path("out"));

    assertEquals(0, code);
    assertTrue(text(out).contains("Photos   1 used, 1 refused\n"), text(out));
    assertTrue(
        text(out).contains("To see to:\n  b.txt: too dark; switch on the light\n"), text(out));
  }

  @Test
  void aQuietRunSaysNothing() {
    assertEquals(0, run("run", path("photos"), "--book", path("book"), "--quiet"));
    assertEquals("", text(out) + text(err));
  }

  @Test
  void withoutATerminalProgressIsALineEachTenth() throws IOException {
    for (int i = 0; i < 39; i++) {
      photo("p" + i + ".txt", "nopicture=1 rafts=R2 area=" + i + " at=2026-04-11T18:00:00+01:00");
    }

    run("run", path("photos"), "--book", path("book"));

    List<String> lines = text(err).lines().toList();
    assertEquals("Measuring 40 photos", lines.get(0));
    assertEquals(11, lines.size());
    assertTrue(
        lines.get(1).matches("4 of 40 photos, [0-9.]+ s a photo, about [0-9]+ s left"),
        lines.get(1));
    assertTrue(lines.get(10).startsWith("40 of 40 photos, "), lines.get(10));
  }

  @Test
  void overlaysCanBeLeftOutAndCanopyAskedFor() throws IOException {
    run(
        "run",
        path("photos"),
        "--book",
        path("book"),
        "--out",
        path("out"),
        "--no-overlays",
        "--canopy");

    assertEquals(
        List.of(
            "canopy/a.coverage.png",
            "canopy/a.site.png",
            "curves.csv",
            "photos.csv",
            "ponds/pond.schema.json",
            "rafts.csv",
            "run.json",
            "sites.csv",
            "verdicts.csv",
            "worklist-a4.pdf",
            "worklist-letter.pdf",
            "worklist.csv"),
        files(folder.resolve("out")));
  }

  @Test
  void aCheckListsEverythingAndWritesNothing() throws IOException {
    assertEquals(0, run("check", "--book", path("book"), path("photos")));
    assertEquals(
        "Nothing is wrong with " + path("book") + " and " + path("photos"), text(out).strip());
    workplace.wrong(
        new Problem("book.yaml:1:1 time_zone", "found \"Lisboa\"", "did you mean Europe/Lisbon"));

    assertEquals(2, run("check", "--book", path("book")));

    assertEquals(
        List.of(
            "book.yaml:1:1 time_zone: found \"Lisboa\"; did you mean Europe/Lisbon", "1 problem"),
        text(err).lines().toList());
    assertEquals(List.of(), files(folder.resolve("book")));
  }

  @Test
  void theHelpPageShowsCommandsExamplesAndExitCodes() {
    assertEquals(0, run("--help"));

    String page = text(out);
    assertTrue(
        page.matches("(?s).*  run +Measures a folder of photos and publishes the results\\..*"),
        page);
    assertTrue(page.contains("  raftgauge run photos/tonight --book my-farm\n"), page);
    assertTrue(
        page.contains("  2  the call, the book or the folder is wrong; nothing was written"), page);
    assertTrue(page.lines().allMatch(line -> line.length() <= 80), page);
  }

  @Test
  void theVersionIsSaid() {
    assertEquals(0, run("--version"));
    assertTrue(text(out).startsWith("raftgauge "), text(out));
  }

  @Test
  void aMisspeltCommandOrOptionIsAskedAbout() {
    assertEquals(2, run("rn", path("photos")));
    assertTrue(
        text(err).startsWith("Unmatched arguments from index 0: 'rn'") && asked("run"), text(err));
    err.reset();
    assertEquals(2, run("run", path("photos"), "--book", path("book"), "--canpoy"));
    assertTrue(text(err).startsWith("Unknown option: '--canpoy'") && asked("--canopy"), text(err));
    err.reset();
    assertEquals(2, run("photograph"));
    assertFalse(text(err).contains("did you mean"), text(err));
  }

  private boolean asked(String name) {
    return text(err).lines().findFirst().orElse("").endsWith("; did you mean \"" + name + "\"?");
  }

  @Test
  void aDamagedHistorySaysWhatToDo() throws IOException {
    Files.writeString(folder.resolve("book/history.db"), "no database ".repeat(100));

    assertEquals(3, run("run", path("photos"), "--book", path("book"), "--out", path("out")));

    assertTrue(
        text(err)
            .contains(
                "; the file is damaged: put back a copy of it, or move it away, then the next run"
                    + " makes a new one"),
        text(err));
  }

  @Test
  void anOutThatCannotBeWrittenIsAWrongCall() throws IOException {
    Files.writeString(folder.resolve("file"), "");

    assertEquals(2, run("run", path("photos"), "--book", path("book"), "--out", path("file/out")));
    assertEquals(
        List.of(
            "OUT "
                + path("file/out")
                + ": lies below \""
                + path("file")
                + "\", which is a file; give another folder"),
        text(err).lines().toList());
    assertEquals(List.of(), files(folder.resolve("book")));
    err.reset();

    Files.createDirectories(folder.resolve("closed"));
    assumeTrue(folder.resolve("closed").toFile().setWritable(false));
    assumeFalse(Files.isWritable(folder.resolve("closed")), "the superuser may write anywhere");
    assertEquals(
        2, run("run", path("photos"), "--book", path("book"), "--out", path("closed/out")));
    assertTrue(text(err).contains("cannot be written: you may not write in"), text(err));
  }

  @Test
  void failuresOfTheFileSystemSayMoreThanAPath() {
    assertEquals(
        "x: you have no right to it; change its rights, or use another folder",
        FailureText.of(new AccessDeniedException("x")));
    assertEquals(
        "x: is not there (any more); look for its drive or folder",
        FailureText.of(new NoSuchFileException("x")));
    assertEquals(
        "x: No space left on device; free some space on the disks of OUT and BOOK and run again",
        FailureText.of(new FileSystemException("x", null, "No space left on device")));
    assertEquals(
        "No space left on device; free some space on the disks of OUT and BOOK and run again",
        FailureText.of(new IOException("No space left on device")));
    assertEquals("as it is", FailureText.of(new IOException("as it is")));
    // As Java words it on Linux and macOS, and on Windows.
    for (String reason : List.of("Permission denied", "Access is denied")) {
      assertEquals(
          "a (b)/m.pdf: you have no right to it; change its rights, or use another folder",
          FailureText.of(new FileNotFoundException("a (b)/m.pdf (" + reason + ")")));
    }
  }

  @Test
  void knownPhotosDoNotCountIntoTheRate() throws IOException {
    run("run", path("photos"), "--book", path("book"), "--out", path("out"));
    err.reset();

    run("run", path("photos"), "--book", path("book"), "--out", path("out"));
    assertEquals(
        List.of("Measuring 1 photo", "1 of 1 photos, measured before and not measured again"),
        text(err).lines().toList());
    err.reset();

    photo("b.txt", "rafts=R2 area=10 at=2026-04-11T18:00:00+01:00");
    run("run", path("photos"), "--book", path("book"), "--out", path("out"));
    assertTrue(text(err).contains("\n2 of 2 photos, 1 of them measured before, "), text(err));
  }

  @Test
  void aMistakeOfTheBookIsSaidAgainAtTheEnd() {
    workplace.mistake(new Problem("plantings.csv:4: column crop", "\"basl\" is unknown", "basil?"));

    assertEquals(0, run("run", path("photos"), "--book", path("book"), "--out", path("out")));

    String line = "plantings.csv:4: column crop: \"basl\" is unknown; basil?\n";
    assertTrue(text(err).startsWith(line), text(err));
    assertTrue(text(out).contains("To see to:\n  " + line), text(out));
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
