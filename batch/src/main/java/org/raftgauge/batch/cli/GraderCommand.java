// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Groups the commands about fresh weight. */
@Command(
    name = "grader",
    mixinStandardHelpOptions = true,
    subcommands = CommandLine.HelpCommand.class,
    header = "Tells fresh weight from areas: fits, checks, picks plants.",
    description = {
      "%nA grader is fitted to plants that you weighed by hand (weighings.csv) and",
      "that photos of the book's history show. There is none built in: without",
      "weighings the program tells areas only."
    },
    synopsisHeading = "%nUsage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge grader fit --book my-farm --crop butterhead",
      "",
      "Weights are estimates from pictures, not legal-for-trade weighing.",
      "Exit codes: 0 done, 2 wrong call or book, or too few weighings (nothing",
      "written), 3 failed."
    })
final class GraderCommand implements Runnable {
  @Spec private CommandSpec spec;

  private GraderCommand() {}

  static CommandLine with(Console console) {
    return new CommandLine(new GraderCommand())
        .addSubcommand(new GraderFitCommand(console))
        .addSubcommand(new GraderCheckCommand(console))
        .addSubcommand(new GraderPicksCommand(console));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
