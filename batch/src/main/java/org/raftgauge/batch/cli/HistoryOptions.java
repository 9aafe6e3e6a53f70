// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.batch.run.JudgeFolder;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Option;

/** Whose history: the options of every command on it. */
final class HistoryOptions {
  @Option(
      names = "--book",
      paramLabel = "BOOK",
      description = "Folder of the crop book. Default: the one in, beside or above this folder.")
  private Path book;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  @SuppressWarnings("UnusedVariable") // Raftgauge reads it from the parsed line
  private boolean verbose;

  Path folder(Console console) throws InputException {
    return FindBook.of(Optional.ofNullable(book), Path.of(""), console);
  }

  History open(Console console) throws InputException, IOException {
    return JudgeFolder.open(folder(console));
  }
}
