// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.proving.harvest.HarvestPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Simulates seasons, forecasts their harvests, and writes a page of the figures. */
@Command(
    name = "harvest",
    mixinStandardHelpOptions = true,
    description =
        "Simulates seasons end to end, forecasts their harvests and writes a page of the figures."
            + " Takes some minutes.")
final class HarvestCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for the seasons' crop books.")
  private Path work;

  @Option(
      names = "--seasons",
      description = "Seasons of each kind, open and closed. Default: ${DEFAULT-VALUE}.")
  private int seasons = 100;

  @Option(names = "--seed", description = "Whole number; the same seed gives the same seasons.")
  private long seed = 1;

  @Option(
      names = "--rendered",
      description =
          "Also three seasons with rendered photos (half an hour; photos in WORK are used again).")
  private boolean rendered;

  @Option(names = "--weekly", description = "weekly-weights.csv of the shared test data.")
  private Path weekly;

  @Override
  public Integer call() throws IOException {
    String page =
        HarvestPage.of(
            new HarvestPage.Asked(seasons, seed, work, rendered, Optional.ofNullable(weekly)));
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
