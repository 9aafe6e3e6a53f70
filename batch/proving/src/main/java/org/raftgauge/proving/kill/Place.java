// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A book, and the place of its results beside it.
 *
 * @param folder holds both
 */
record Place(Path folder) {

  Path book() {
    return folder.resolve("book");
  }

  Path out() {
    return folder.resolve("out");
  }

  Path history() {
    return book().resolve("history.db");
  }

  /** Returns the call of a plain run. */
  List<String> call(Path photos) {
    return List.of(
        "run",
        photos.toString(),
        "--book",
        book().toString(),
        "--out",
        out().toString(),
        "--workers",
        "2",
        "--no-overlays",
        "--quiet");
  }

  /** Makes this place anew as a copy of another. */
  void copyOf(Place other) throws IOException {
    clear();
    copy(other.folder(), folder);
  }

  /** Removes all that is in it. */
  void clear() throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.sorted(Comparator.reverseOrder()).filter(p -> !p.equals(folder)).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }

  static void copy(Path from, Path to) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(from)) {
      all = walk.sorted().toList();
    }
    for (Path path : all) {
      Path there = to.resolve(from.relativize(path).toString());
      if (Files.isDirectory(path)) {
        Files.createDirectories(there);
      } else {
        Files.copy(path, there, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }
}
