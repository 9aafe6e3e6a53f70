// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.fault.StationsPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Renders station evenings with faults and writes a page of what the station check says. */
@Command(
    name = "stations",
    mixinStandardHelpOptions = true,
    description =
        "Renders evenings of fixed stations, with and without faults, and writes a page of what the"
            + " station check says of them. Photos in WORK are used again.")
final class StationsCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for the photos.")
  private Path work;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(names = "--stations", description = "Stations. Default: ${DEFAULT-VALUE}.")
  private int stations = 2;

  @Option(names = "--evenings", description = "Evenings a station. Default: ${DEFAULT-VALUE}.")
  private int evenings = 36;

  @Option(
      names = "--fault-evenings",
      description = "Evenings that a fault lasts. Default: ${DEFAULT-VALUE}.")
  private int faultEvenings = 4;

  @Option(
      names = "--seed",
      description = "Of stations and usual evenings. Default: ${DEFAULT-VALUE}.")
  private long seed = 3301;

  @Option(names = "--fault-seed", description = "Of the faults. Default: ${DEFAULT-VALUE}.")
  private long faultSeed = 7717;

  @Override
  public Integer call() throws IOException {
    String stamp = "commit " + Commit.of(root);
    String page =
        StationsPage.of(
            new StationsPage.Asked(work, stations, evenings, faultEvenings, seed, faultSeed, stamp),
            System.err::println);
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
