// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.raftgauge.batch.store.ExportedTable;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes the history as CSV. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    header = "Writes the whole history as CSV files, nothing rounded or left out.",
    description = {
      "%nA file for each table, and tables.csv with the rows and the hash of each.",
      "raftgauge import --history reads them back, and a second export has the same",
      "bytes."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhere to:%n",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge history export history-csv --book my-farm"})
final class HistoryExportCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "DIR", description = "A new or empty folder.")
  private Path folder;

  @Mixin private HistoryOptions options;

  HistoryExportCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    checkEmpty();
    try (History history = options.open(console)) {
      Files.createDirectories(folder);
      for (ExportedTable table : history.export(folder)) {
        console.out().println(table.rows() + " " + table.table().replace('_', ' '));
      }
    }
    console.out().println("Written to " + folder);
    return ExitCode.DONE;
  }

  private void checkEmpty() throws InputException, IOException {
    if (!Files.exists(folder)) {
      return;
    }
    boolean empty = false;
    if (Files.isDirectory(folder)) {
      try (Stream<Path> list = Files.list(folder)) {
        empty = list.findAny().isEmpty();
      }
    }
    if (!empty) {
      throw new InputException(
          List.of(new Problem("DIR " + folder, "is not empty", "give a new or empty folder")));
    }
  }
}
