// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.pace.PacePage;
import org.raftgauge.proving.set.SetName;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures how fast photos are measured and writes a page of it. */
@Command(
    name = "pace",
    mixinStandardHelpOptions = true,
    description = {
      "Measures CPU time, memory and area error over rendered photos, beside the system's JPEG",
      "decoder (djpeg) and a plain Python script on the same files, and writes a page of it.",
      "Photos in WORK are used again. Keep the machine quiet meanwhile."
    })
final class PaceCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for photos and runs.")
  private Path work;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(
      names = "--megapixels",
      split = ",",
      defaultValue = "12,24",
      description = "Sizes of the photos. Default: ${DEFAULT-VALUE}.")
  private List<Double> megapixels;

  @Option(names = "--seed", description = "Of the photos. Default: ${DEFAULT-VALUE}.")
  private long seed = 3;

  @Option(
      names = "--photos",
      description =
          "At most so many photos of each size, drawn from 12. Default: ${DEFAULT-VALUE}.")
  private int photos = 12;

  @Option(names = "--rounds", description = "Rounds that count. Default: ${DEFAULT-VALUE}.")
  private int rounds = 5;

  @Override
  public Integer call() throws IOException, InterruptedException {
    Files.createDirectories(work);
    SetName.Order order = new SetName.Order(seed, photos, 0);
    String page =
        PacePage.of(
            new PacePage.Asked(root, work, order, megapixels, rounds, "commit " + Commit.of(root)),
            System.err::println);
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
