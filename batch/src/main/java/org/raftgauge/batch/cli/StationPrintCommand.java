// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints what a station needs. */
@Command(
    name = "print",
    mixinStandardHelpOptions = true,
    header = "Makes PDFs to print at true scale: lens target, raft tags, corner markers.",
    synopsisHeading = "%nUsage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge station print target --out target.pdf",
      "",
      "Print at 100 %% (\"actual size\", no fitting to the page) and measure the check",
      "line at the foot with a steel rule before you cut."
    })
final class StationPrintCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** Returns the command with its own commands. */
  static CommandLine line(Console console) {
    return new CommandLine(new StationPrintCommand())
        .addSubcommand(new PrintTargetCommand(console))
        .addSubcommand(new PrintMarksCommand(console));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
