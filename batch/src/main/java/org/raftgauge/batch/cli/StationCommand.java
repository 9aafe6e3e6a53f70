// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Sets up and checks stations. */
@Command(
    name = "station",
    mixinStandardHelpOptions = true,
    header = "Sets up a station and checks it: lens, pair, printed marks, slots, drift.",
    synopsisHeading = "%nUsage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge station print marks --book my-farm --out marks.pdf"})
final class StationCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** Returns the command with its own commands. */
  static CommandLine line(Console console) {
    return new CommandLine(new StationCommand())
        .addSubcommand(new StationLensCommand(console))
        .addSubcommand(new StationPairCommand(console))
        .addSubcommand(StationPrintCommand.line(console))
        .addSubcommand(new StationSlotsCommand(console))
        .addSubcommand(new StationCheckCommand(console));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
