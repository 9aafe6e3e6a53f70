// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Corrects what was measured without taking anything away. */
@Command(
    name = "amend",
    mixinStandardHelpOptions = true,
    header = "Corrects the history: excludes photos, moves them to another raft, mends times.",
    description = {
      "%nNothing that was measured is changed: corrections are kept beside it with who,",
      "when and why, and each can be undone. run, forecast and look-back obey those",
      "that hold; judge --on obeys those that were entered by that evening, and with",
      "--corrected those entered since. What a correction does shows on the page, the",
      "worklist and in photos.csv, rafts.csv and run.json."
    },
    synopsisHeading = "%nUsage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge amend exclude 2026-04-11/IMG_31.jpg --reason \"hand in the picture\"",
      "  raftgauge amend move 2026-04-11/IMG_32.jpg --to DR-0402 --reason \"wrong tag\"",
      "  raftgauge amend clock 2026-04-12/ --shift +1:00 --reason \"summer time\"",
      "  raftgauge amend undo 2 --reason \"the tag was right\"",
      "",
      "A planting is mended in plantings.csv; the next run obeys that too."
    })
final class AmendCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** Returns the command with its own commands. */
  static CommandLine line(Workplace workplace, Console console) {
    return new CommandLine(new AmendCommand())
        .addSubcommand(new AmendExcludeCommand(workplace, console))
        .addSubcommand(new AmendMoveCommand(workplace, console))
        .addSubcommand(new AmendClockCommand(workplace, console))
        .addSubcommand(new AmendUndoCommand(workplace, console))
        .addSubcommand(new AmendListCommand(console));
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
