// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.kill.Campaign;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Kills runs, fills disks, lets runs meet, and writes a page of what came of it. */
@Command(
    name = "faults",
    mixinStandardHelpOptions = true,
    description =
        "Kills runs at random moments and before each step that changes the disk, fills disks, lets"
            + " runs meet; after each a plain run must bring everything back. Needs a system with"
            + " signals; the disks need the right to mount. A WORK of an earlier call goes on where"
            + " that ended.")
final class FaultsCommand implements Callable<Integer> {
  private static final String PAGE = "batch/proving/FAULTS.md";

  @Option(names = "--work", required = true, description = "Folder for photos and books.")
  private Path work;

  @Option(names = "--docs", description = "Write " + PAGE + ", of what is done so far.")
  private boolean docs;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(names = "--kills", description = "Number of kills. Default: ${DEFAULT-VALUE}.")
  private int kills = 306;

  @Option(names = "--seed", description = "Of photos and kills. Default: ${DEFAULT-VALUE}.")
  private long seed = 8201;

  @Option(
      names = "--minutes",
      description = "Stop after so many; call again to go on. Default: until all is done.")
  private double minutes = 1e6;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Campaign.Asked asked =
        new Campaign.Asked(work, kills, seed, minutes, "commit " + Commit.of(root));
    Campaign.Page page = Campaign.run(asked, System.err::println);
    if (docs) {
      Files.writeString(root.resolve(PAGE), page.text());
    }
    System.out.print(page.text());
    if (!page.whole()) {
      System.out.println("Not all is done yet: call again to go on");
    }
    return 0;
  }
}
