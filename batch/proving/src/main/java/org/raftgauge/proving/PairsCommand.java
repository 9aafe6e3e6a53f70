// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.pair.PairsPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Renders pairs of photos and writes a page of the heights that the program sees in them. */
@Command(
    name = "pairs",
    mixinStandardHelpOptions = true,
    description =
        "Renders rafts under two cameras and writes a page of the heights, and the areas, that the"
            + " program finds. Photos and scores in WORK are used again.")
final class PairsCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for the photos.")
  private Path work;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(names = "--canopies", description = "Of six canopies. Default: ${DEFAULT-VALUE}.")
  private int canopies = 6;

  @Option(
      names = "--focal",
      split = ",",
      defaultValue = "1200,2400",
      description = "Focal lengths, px. Default: ${DEFAULT-VALUE}.")
  private List<Double> focals;

  @Option(names = "--seed", description = "Of everything that varies. Default: ${DEFAULT-VALUE}.")
  private long seed = 6121;

  @Override
  public Integer call() throws IOException {
    String stamp = "commit " + Commit.of(root);
    String page =
        PairsPage.of(new PairsPage.Asked(work, canopies, focals, seed, stamp), System.err::println);
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
