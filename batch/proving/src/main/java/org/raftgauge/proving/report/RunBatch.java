// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;

/** Runs the program over a photo folder, with a copy of the book so that the book stays as is. */
final class RunBatch {
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
    BookCopy.of(book, copy);
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
}
