// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.scale.ScalePage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures the analysis of farms of very many sites and writes a page of it. */
@Command(
    name = "scale",
    mixinStandardHelpOptions = true,
    description = {
      "Makes farms of very many sites without pictures, times the analysis of an evening, and writes",
      "a page of it. Farms in WORK are used again. Keep the machine quiet meanwhile."
    })
final class ScaleCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for farms and results.")
  private Path work;

  @Option(
      names = "--sites",
      split = ",",
      defaultValue = "10000,100000,400000",
      description = "Sizes of the farms. Default: ${DEFAULT-VALUE}.")
  private List<Integer> sites;

  @Option(names = "--seed", description = "Of the farms. Default: ${DEFAULT-VALUE}.")
  private long seed = 9;

  @Override
  public Integer call() throws IOException {
    Files.createDirectories(work);
    String page =
        ScalePage.of(new ScalePage.Asked(work, sites, seed, "commit " + Commit.of(Path.of("."))));
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
