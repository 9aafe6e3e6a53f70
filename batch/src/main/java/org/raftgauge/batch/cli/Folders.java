// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Checks the folders of a command line. */
final class Folders {

  private Folders() {}

  static void exists(String name, Path folder, String remedy) throws InputException {
    if (!Files.isDirectory(folder)) {
      String found = Files.exists(folder) ? "is a file, not a folder" : "does not exist";
      throw new InputException(List.of(new Problem(name + " " + folder, found, remedy)));
    }
  }

  static void notEmpty(Path photos, FoundPhotos found) throws InputException {
    if (found.photos().isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "PHOTOS " + photos,
                  "holds no photos",
                  "give the folder that holds the photos: JPEG, PNG or TIFF")));
    }
  }

  /** Refuses a choice that leaves no photo. */
  static void someLeft(Path photos, FoundPhotos chosen) throws InputException {
    if (chosen.photos().isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "PHOTOS " + photos,
                  "holds no photo of what --since, --to and --raft ask for",
                  "ask for other days or rafts")));
    }
  }
}
