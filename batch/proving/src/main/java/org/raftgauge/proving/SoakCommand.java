// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.report.AccuracyPage;
import org.raftgauge.proving.report.Section;
import org.raftgauge.proving.soak.Soak;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Runs the program once over very many small photos. */
@Command(
    name = "soak",
    mixinStandardHelpOptions = true,
    description =
        "Draws very many small photos of distinct bytes, rafts and times, measures them in one run"
            + " of the program in a process of its own, and says how memory and time a photo went.")
final class SoakCommand implements Callable<Integer> {
  @Option(names = "--work", required = true, description = "New folder for photos and results.")
  private Path work;

  @Option(names = "--photos", description = "How many. Default: ${DEFAULT-VALUE}.")
  private int photos = 10_000;

  @Option(names = "--seed", description = "Of the drawings. Default: ${DEFAULT-VALUE}.")
  private long seed = 6101;

  @Option(names = "--heap-mb", description = "Java heap, MB. Default: ${DEFAULT-VALUE}.")
  private int heapMb = 384;

  @Option(names = "--overlays", description = "Make overlay pictures, as run does.")
  private boolean overlays;

  @Option(
      names = "--docs",
      description =
          "Rewrite the section of batch/proving/ROBUSTNESS.md; the current folder is the checkout.")
  private boolean docs;

  @Override
  public Integer call() throws IOException {
    Soak.Asked asked = new Soak.Asked(work, photos, seed, heapMb, overlays);
    Section section = Soak.section(asked, Commit.of(Path.of("").toAbsolutePath()));
    System.out.print(section.body());
    if (docs) {
      AccuracyPage.replace(Path.of("batch/proving/ROBUSTNESS.md"), section);
    }
    return 0;
  }
}
