// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;

/** Runs the program over a photo folder, with a copy of the book so that the book stays as is. */
final class RunBatch {
  private static final List<String> LEAVINGS = List.of("history.db", "run.lock", "runs");

  private RunBatch() {}

  /**
   * Runs.
   *
   * @param photos the photo folder
   * @param book the crop book, which is copied
   * @param work folder for the copy and the results
   * @return {@code sites.csv} of the run
   * @throws IOException if the run fails
   */
  static Path over(Path photos, Path book, Path work) throws IOException {
    Path copy = work.resolve("book");
    copy(book, copy);
    Path out = work.resolve("run");
    String[] call = {
      "run", photos.toString(), "--book", copy.toString(), "--out", out.toString(), "--no-overlays"
    };
    int code = Raftgauge.run(call, new BookWorkplace(), Console.system());
    if (code != 0) {
      throw new IOException("the run over " + photos + " ended with exit code " + code);
    }
    return out.resolve("sites.csv");
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        Path below = from.relativize(file);
        if (!LEAVINGS.contains(below.getName(0).toString())) {
          Files.createDirectories(to.resolve(below.toString()).getParent());
          Files.copy(file, to.resolve(below.toString()), StandardCopyOption.REPLACE_EXISTING);
        }
      }
    }
  }
}
