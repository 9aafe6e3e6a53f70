// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.weights.GraderPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Makes the page of the grader's figures. */
@Command(
    name = "grader",
    mixinStandardHelpOptions = true,
    description = {
      "Scores the grader's statistics on a table of hand-weighed lettuce (shared test data) and"
          + " writes a page. Takes some minutes."
    })
final class GraderCommand implements Callable<Integer> {
  @Option(
      names = "--table",
      required = true,
      description = "lettuce-traits.csv: plant_id, variety, then sizes.")
  private Path table;

  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(
      names = "--resamples",
      description = "Calibrations of each size. Default: ${DEFAULT-VALUE}.")
  private int resamples = 500;

  @Override
  public Integer call() throws IOException {
    String page = GraderPage.of(table, resamples);
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
