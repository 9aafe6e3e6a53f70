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

  /** Refuses a folder where a file is due. */
  static void noFolder(String name, Path file, String remedy) throws InputException {
    if (Files.isDirectory(file)) {
      throw new InputException(
          List.of(new Problem(name + " " + file, "is a folder, not a file", remedy)));
    }
  }

  /**
   * Refuses a crop book in the place of the photos: pictures of its runs would be taken for photos.
   */
  static void notABook(Path photos, Workplace workplace) throws InputException {
    if (!Files.isRegularFile(photos.resolve("book.yaml"))) {
      return;
    }
    String below =
        workplace.photos(photos).photos().stream()
            .map(photo -> photo.facts().photo())
            .filter(photo -> photo.contains("/") && !photo.startsWith("runs/"))
            .map(photo -> "\"" + photos.resolve(photo.substring(0, photo.indexOf('/'))) + "\"")
            .findFirst()
            .orElse("as in \"" + photos.resolveSibling("photos") + "\"");
    throw new InputException(
        List.of(
            new Problem(
                "PHOTOS " + photos,
                "is a crop book (it holds book.yaml), not the photos",
                "give the folder that holds the photos, "
                    + below
                    + "; it lies beside or below the"
                    + " book, and book.yaml is not in it")));
  }

  static void notEmpty(Path photos, FoundPhotos found) throws InputException {
    if (found.photos().isEmpty()) {
      throw new InputException(List.of(empty(photos)));
    }
  }

  /** Says that a folder holds no photos. */
  static Problem empty(Path photos) {
    return new Problem(
        "PHOTOS " + photos,
        "holds no photos",
        "give the folder that holds the photos: JPEG, PNG or TIFF");
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
