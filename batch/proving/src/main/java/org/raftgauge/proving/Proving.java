// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Starts the proving ground: renders photos with exact truth and scores runs against them. */
@Command(
    name = "prove",
    mixinStandardHelpOptions = true,
    description = "Renders raft photos with exact truth and scores a run against them.",
    subcommands = {
      RenderCommand.class,
      TargetCommand.class,
      PlainCommand.class,
      AccuracyCommand.class,
      ReportCommand.class,
      ModelsCommand.class,
      HolesCommand.class,
      GraderCommand.class,
      SeasonCommand.class,
      HarvestCommand.class,
      StationsCommand.class,
      FaultsCommand.class,
      SoakCommand.class,
      RobustnessCommand.class,
      TraysCommand.class,
      PaceCommand.class,
      PairsCommand.class,
      ScaleCommand.class,
      EverydayCommand.class
    })
public final class Proving {

  private Proving() {}

  /**
   * Runs a subcommand and exits: 0 done, 2 wrong call, 3 failed.
   *
   * @param arguments see {@code --help}
   */
  public static void main(String[] arguments) {
    System.setProperty("java.awt.headless", "true");
    CommandLine line = new CommandLine(new Proving());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(
        (failure, command, parsed) -> {
          command.getErr().println("prove: " + failure);
          return 3;
        });
    System.exit(line.execute(arguments));
  }
}
