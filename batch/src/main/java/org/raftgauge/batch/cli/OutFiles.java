// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Checks files that a command is to write; none is ever overwritten. */
final class OutFiles {

  private OutFiles() {}

  static void isNew(String name, Path file) throws InputException {
    if (Files.exists(file)) {
      throw new InputException(
          List.of(
              new Problem(
                  name + " " + file,
                  "exists",
                  "give another name, or move it away: nothing is overwritten")));
    }
  }

  static void makeParent(Path file) throws IOException {
    Path parent = file.toAbsolutePath().getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
  }

  /** Returns a file's name without its ending. */
  static String stem(Path file) {
    return file.getFileName().toString().replaceFirst("\\.[^.]*$", "");
  }
}
