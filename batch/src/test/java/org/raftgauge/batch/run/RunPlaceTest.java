// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.core.problem.InputException;

/** Where a run is published, and what it leaves alone. */
class RunPlaceTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void withoutOutTheFolderIsNamedByTheEveningAndNeverReplaced() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);

    assertEquals(folder.resolve("book/runs/2026-04-11"), runs.run(null).folder());
    assertEquals(folder.resolve("book/runs/2026-04-11-2"), runs.run(null).folder());
  }

  @Test
  void aFolderWithOtherThingsIsNeverTouched() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.run("out");
    Files.writeString(folder.resolve("out/notes.txt"), "mine");

    InputException e = assertThrows(InputException.class, () -> runs.run("out"));

    assertEquals(
        "OUT "
            + folder.resolve("out")
            + ": holds \"notes.txt\", which no earlier run wrote; give a new or empty folder, or an"
            + " earlier run's",
        e.getMessage());
    assertEquals("mine", runs.text("out/notes.txt"));
  }

  @Test
  void theRunFolderMustNotLieAmongThePhotosNorHoldThem() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);

    assertTrue(
        assertThrows(InputException.class, () -> runs.run("photos/out"))
            .getMessage()
            .contains(
                "lies inside the photo folder; pictures of the run would be taken for photos"));
    assertTrue(
        assertThrows(InputException.class, () -> runs.run("."))
            .getMessage()
            .contains("holds the photos or the book; give an OUT of its own"));
    Files.createSymbolicLink(folder.resolve("link"), folder.resolve("photos"));
    assertTrue(
        assertThrows(InputException.class, () -> runs.run("link/out"))
            .getMessage()
            .contains("photos/out: lies inside the photo folder"));
  }

  @Test
  void aRunThatFailsLeavesNothingButWhatItMeasured() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.progress.stopAfter(1);

    assertThrows(IllegalStateException.class, () -> runs.run("out"));

    assertEquals(List.of("book", "photos"), RunFixture.names(folder));
    runs.progress.stopAfter(Integer.MAX_VALUE);
    assertEquals(1, runs.run("out").rafts());
  }

  @Test
  void aSecondRunOnABookSaysWhoHoldsIt() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    try (BookLock held = BookLock.take(folder.resolve("book"), Duration.ZERO, who -> {})) {
      IOException e = assertThrows(IOException.class, () -> runs.run("out"));

      String holder = "another run (process " + ProcessHandle.current().pid() + " on ";
      assertTrue(e.getMessage().contains("book is in use by " + holder), e.getMessage());
      assertTrue(runs.progress.waited().startsWith(holder), runs.progress.waited());
      assertTrue(held != null);
    }
    assertEquals(1, runs.run("out").rafts());
  }
}
