// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Copies the history. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    header = "Copies the history to a file; a run may be at work meanwhile.",
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhere to:%n",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge history backup /media/stick/history-april.db"})
final class HistoryBackupCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "FILE", description = "A file that is not there yet.")
  private Path file;

  @Mixin private HistoryOptions options;

  HistoryBackupCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (Files.exists(file)) {
      throw new InputException(
          List.of(new Problem("FILE " + file, "is there already", "give another name")));
    }
    try (History history = options.open(console)) {
      history.copyTo(file);
    }
    console.out().println("Copied to " + file + ", " + Files.size(file) / 1024 + " KB");
    return ExitCode.DONE;
  }
}
