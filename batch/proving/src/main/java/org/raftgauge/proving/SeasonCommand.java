// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.season.ProveSeason;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Simulates a season and scores the verdicts. */
@Command(
    name = "season",
    mixinStandardHelpOptions = true,
    description =
        "Simulates growing seasons and scores every evening's verdicts against the truth.")
final class SeasonCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "Folder to write to.")
  private Path out;

  @Option(names = "--seed", description = "Whole number; the same seed gives the same seasons.")
  private long seed = 1;

  @Option(names = "--rafts", description = "Rafts a season. Default: ${DEFAULT-VALUE}.")
  private int rafts = 200;

  @Override
  public Integer call() throws IOException {
    ProveSeason.run(out, seed, rafts, text -> System.out.println(text));
    return 0;
  }
}
