// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Looks after the history. */
@Command(
    name = "history",
    mixinStandardHelpOptions = true,
    header = "Looks after the book's history: checks it, copies it, writes it as CSV.",
    description = {
      "%nEvery run looks quickly through the history before it measures, and copies it",
      "to BOOK/backups when it has published: one copy a day, the latest three days."
    },
    synopsisHeading = "%nUsage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge history check --book my-farm",
      "  raftgauge history export history-csv --book my-farm",
      "  raftgauge import --history history-csv --book new-farm"
    })
final class HistoryCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** Returns the command with its own commands. */
  static CommandLine line(Console console) {
    return new CommandLine(new HistoryCommand())
        .addSubcommand(new HistoryCheckCommand(console))
        .addSubcommand(new HistoryBackupCommand(console))
        .addSubcommand(new HistoryExportCommand(console))
        .addSubcommand(new HistoryCompareCommand(console));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
