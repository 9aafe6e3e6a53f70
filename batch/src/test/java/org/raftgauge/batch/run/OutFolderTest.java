// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.InputException;

class OutFolderTest {
  @TempDir Path folder;

  @Test
  void resultsThatAnotherRunIsJustPuttingThereAreNotForeign() throws Exception {
    Path out = Files.createDirectories(folder.resolve("out"));
    Files.writeString(out.resolve("sites.csv"), "half there");
    Thread other =
        new Thread(
            () -> {
              try {
                Thread.sleep(100);
                Files.delete(out.resolve("sites.csv"));
              } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
              }
            });
    other.start();
    OutFolder.check(out, folder.resolve("book"));
    other.join();
  }

  @Test
  void whatStaysThereIsForeign() throws IOException {
    Path out = Files.createDirectories(folder.resolve("out"));
    Files.writeString(out.resolve("letters.txt"), "mine");
    InputException refused =
        assertThrows(InputException.class, () -> OutFolder.check(out, folder.resolve("book")));
    assertEquals(
        "OUT "
            + out.toRealPath()
            + ": holds \"letters.txt\", which no earlier run wrote; give a new or empty folder, or"
            + " an earlier run's",
        refused.problems().get(0).toString());
  }

  @Test
  void whatNeedsNoPhotosDoesNotReplaceARun() throws IOException {
    Path out = Files.createDirectories(folder.resolve("out"));
    Files.writeString(out.resolve("photos.csv"), "photo\n");
    Files.writeString(
        out.resolve("run.json"), RunJson.text(Map.of(), List.of(Path.of("photos.csv"))));
    InputException refused =
        assertThrows(InputException.class, () -> OutFolder.check(out, folder.resolve("book")));
    assertEquals(
        "OUT "
            + out.toRealPath()
            + ": holds the results of a run over photos, with its page and pictures; give another"
            + " folder",
        refused.problems().get(0).toString());
  }

  @Test
  void resultsThatMayNotBeRemovedAreSaidBeforeAnythingIsMeasured() throws IOException {
    Path shut = Files.createDirectories(folder.resolve("out/plots"));
    assumeTrue(shut.toFile().setWritable(false) && !Files.isWritable(shut), "no rights here");
    InputException refused =
        assertThrows(
            InputException.class,
            () -> OutFolder.check(folder.resolve("out"), folder.resolve("book")));
    assertEquals(
        "OUT "
            + folder.resolve("out").toRealPath()
            + ": cannot be replaced: you may not write in \""
            + shut.toRealPath()
            + "\"; give an OUT elsewhere, or change that folder's rights",
        refused.problems().get(0).toString());
  }

  @Test
  void aWholeDriveIsNoPlaceForResults() throws IOException {
    Path drive = Path.of("/dev/shm");
    assumeTrue(
        Files.isDirectory(drive)
            && !Files.getFileStore(drive).equals(Files.getFileStore(drive.getParent())),
        "this system has no drive at /dev/shm");
    InputException refused =
        assertThrows(InputException.class, () -> OutFolder.check(drive, folder));
    assertEquals(
        List.of(
            "OUT /dev/shm: is a whole drive, and results take the place of a folder; give a folder"
                + " on it, such as /dev/shm/results"),
        refused.problems().stream().map(Object::toString).toList());
  }
}
