// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Moves photos to another raft. */
@Command(
    name = "move",
    mixinStandardHelpOptions = true,
    header = "Says that photos show another raft than they were taken for.",
    description = {
      "%nThe other raft must have a planting of the same layout on that evening: the",
      "measures stay as they are. Otherwise name the raft in manifest.csv and run",
      "again."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhich photos:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge amend move 2026-04-11/IMG_32.jpg --to DR-0402 --reason \"wrong tag\""
    })
final class AmendMoveCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(
      paramLabel = "PHOTO",
      arity = "1..*",
      description =
          "Its file, its path or name as in photos.csv, a folder as 2026-04-11/, or the first 8 or more digits of"
              + " the sha256.")
  private List<String> photos;

  @Option(names = "--to", paramLabel = "RAFT", required = true, description = "The raft it is.")
  private String to;

  @Option(
      names = "--raft",
      paramLabel = "RAFT",
      description = "The raft as measured. Default: the only one that the photo shows.")
  private String from;

  @Mixin private AmendOptions options;

  AmendMoveCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    return AmendOptions.told(
        options.open(workplace, console).move(photos, Optional.ofNullable(from), to), console);
  }
}
