// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Copies and empties folders of the benchmark. */
final class Folders {

  private Folders() {}

  static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  /** Makes sure that a folder of the benchmark's own is there and empty. */
  static Path emptied(Path folder) throws IOException {
    if (Files.exists(folder)) {
      List<Path> all;
      try (Stream<Path> files = Files.walk(folder)) {
        all = files.sorted(Comparator.reverseOrder()).toList();
      }
      for (Path path : all) {
        Files.delete(path);
      }
    }
    return Files.createDirectories(folder);
  }
}
