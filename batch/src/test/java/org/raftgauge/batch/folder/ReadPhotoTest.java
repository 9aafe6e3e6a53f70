// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.folder;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.InputException;

class ReadPhotoTest {
  @TempDir private Path folder;

  @Test
  void theBytesAreReadAsTheyAre() throws IOException, InputException {
    Path file = Files.write(folder.resolve("a.jpg"), new byte[] {1, 2, 3});
    assertArrayEquals(new byte[] {1, 2, 3}, ReadPhoto.bytes(file, "a.jpg"));
  }

  @Test
  void aNameThatIsNoTextSaysToRenameTheFile() {
    // A Latin-1 u umlaut in a name shows as U+FFFD, and as "?" where the locale knows no letters.
    for (String name : new String[] {"K\uFFFDbel.jpg", "K?bel.jpg"}) {
      assertEquals(
          name
              + ": the file's name, or its folder's, is not UTF-8 and cannot be opened; rename it"
              + " in plain letters and run again",
          fault(name));
    }
    assertEquals(
        "gone.jpg: the file is not there any more; copy it from the camera again",
        fault("gone.jpg"));
  }

  @Test
  void aFileOverTheLimitSaysTheLimitAndWhatToDo() throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(folder.resolve("film.jpg").toFile(), "rw")) {
      file.setLength(600L << 20); // takes no space: the file has a hole
    }
    assertEquals(
        "film.jpg: the file has 600 MB, over the limit of 512; take it out of the folder: no photo"
            + " is so large; a film is not read",
        fault("film.jpg"));
  }

  @Test
  void aDriveThatHiccupsIsAskedAgainAndEachTimeItIsSaid() throws IOException {
    List<String> said = new ArrayList<>();
    int[] asked = {0};

    byte[] bytes =
        ReadPhoto.persistent(
            () -> {
              if (asked[0]++ < 2) {
                throw new IOException("Input/output error");
              }
              return new byte[] {7};
            },
            said::add,
            1);

    assertArrayEquals(new byte[] {7}, bytes);
    assertEquals(List.of("Input/output error", "Input/output error"), said);
  }

  @Test
  void aDriveThatStaysAwayIsGivenUpAfterFourTimes() {
    int[] asked = {0};

    IOException e =
        assertThrows(
            IOException.class,
            () ->
                ReadPhoto.persistent(
                    () -> {
                      asked[0]++;
                      throw new IOException("Stale file handle");
                    },
                    why -> {},
                    1));

    assertEquals("Stale file handle", e.getMessage());
    assertEquals(4, asked[0]);
  }

  @Test
  void aFileThatIsGoneIsNotAskedForAgain() {
    int[] asked = {0};

    assertThrows(
        NoSuchFileException.class,
        () ->
            ReadPhoto.persistent(
                () -> {
                  asked[0]++;
                  throw new NoSuchFileException("a.jpg");
                },
                why -> {},
                1));

    assertEquals(1, asked[0]);
  }

  private String fault(String name) {
    Path file = folder.resolve(name);
    return assertThrows(InputException.class, () -> ReadPhoto.bytes(file, name)).getMessage();
  }
}
