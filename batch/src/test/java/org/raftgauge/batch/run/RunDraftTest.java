// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunDraftTest {
  /** Larger than any process id that Linux, macOS or Windows gives out. */
  private static final String NO_PROCESS = "999999999999";

  @TempDir private Path parent;

  @Test
  void whatAKilledRunLeftIsClearedAway() throws IOException {
    Path left = parent.resolve(".part-" + NO_PROCESS);
    Files.createDirectories(left.resolve("overlays"));
    Files.writeString(left.resolve("overlays/a.jpg"), "x");

    RunDraft.start(parent).close();

    assertFalse(Files.exists(left));
  }

  @Test
  void anEarlierRunThatAKillLeftAsideIsPutBack() throws IOException {
    Path aside = parent.resolve(".earlier-" + NO_PROCESS + "-2026-04-11");
    Files.createDirectories(aside);
    Files.writeString(aside.resolve("run.json"), "earlier");

    RunDraft.start(parent).close();

    assertEquals("earlier", Files.readString(parent.resolve("2026-04-11/run.json")));
  }

  @Test
  void newResultsStandWhereTheEarlierOnesCannotBeRemoved() throws IOException {
    Path out = parent.resolve("out");
    Path shut = Files.createDirectories(out.resolve("plots"));
    Files.writeString(shut.resolve("a.svg"), "x");
    Files.writeString(
        out.resolve("run.json"), "{\n  \"program\": \"raftgauge\",\n    \"plots/a.svg\"\n}");
    assumeTrue(shut.toFile().setWritable(false) && !Files.isWritable(shut), "no rights here");
    try (RunDraft draft = RunDraft.start(parent)) {
      draft.write(to -> Files.exists(Files.writeString(to.resolve("run.json"), "new")));
      String left = draft.publish(out).orElseThrow();
      assertTrue(left.startsWith("the results before could not be removed; they lie in "), left);
    }
    assertEquals("new", Files.readString(out.resolve("run.json")));
    RunDraft.start(parent).close();
  }

  @Test
  void theDraftOfALivingProcessIsLeftAlone() throws IOException {
    long other = ProcessHandle.current().parent().map(ProcessHandle::pid).orElse(1L);
    Path draft = parent.resolve(".part-" + other);
    Files.createDirectories(draft);

    RunDraft.start(parent).close();

    assertTrue(Files.exists(draft));
  }

  @Test
  void foldersOfOtherNamesAreLeftAlone() throws IOException {
    Files.createDirectories(parent.resolve(".part-of-my-farm"));
    Files.createDirectories(parent.resolve("part-12"));

    RunDraft.start(parent).close();

    assertTrue(Files.exists(parent.resolve(".part-of-my-farm")));
    assertTrue(Files.exists(parent.resolve("part-12")));
  }

  @Test
  void aClosedDraftTakesNoMoreFilesAndIsGone() throws IOException {
    RunDraft draft = RunDraft.start(parent);
    draft.write(to -> Files.writeString(to.resolve("a"), "a") != null);
    draft.close();

    IOException e = assertThrows(IOException.class, () -> draft.write(to -> true));

    assertEquals("the run was stopped", e.getMessage());
    assertThrows(IOException.class, () -> draft.publish(parent.resolve("out")));
    try (var left = Files.list(parent)) {
      assertEquals(0, left.count());
    }
  }

  @Test
  void somethingPutInThePlaceMeanwhileIsNotTouched() throws IOException {
    try (RunDraft draft = RunDraft.start(parent)) {
      Path out = parent.resolve("out");
      Files.createDirectories(out);
      Files.writeString(out.resolve("mine.txt"), "mine");

      IOException e = assertThrows(IOException.class, () -> draft.publish(out));

      assertEquals(out + " now holds \"mine.txt\"", e.getMessage());
      assertEquals("mine", Files.readString(out.resolve("mine.txt")));
    }
  }
}
