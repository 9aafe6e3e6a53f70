// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.proving.accuracy.TeachHoles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Teaches what tells leaf from what fills planting holes. */
@Command(
    name = "holes",
    mixinStandardHelpOptions = true,
    description =
        "Renders boards whose fillings are drawn at random and teaches from them what tells leaf"
            + " from a plug. Takes half an hour or more.")
final class HolesCommand implements Callable<Integer> {
  private static final String PLACE =
      "core/src/main/resources/org/raftgauge/core/canopy/hole-network.txt";

  @Option(names = "--work", required = true, description = "Folder for the photos.")
  private Path work;

  @Option(names = "--seed", description = "Whole number. Default: ${DEFAULT-VALUE}.")
  private long seed = 7001;

  @Option(names = "--photos", description = "How many of each size. Default: ${DEFAULT-VALUE}.")
  private int photos = 200;

  @Option(
      names = "--root",
      description = "The checkout, whose file is replaced. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Override
  public Integer call() throws IOException, InputException {
    Files.writeString(root.resolve(PLACE), TeachHoles.from(work, seed, photos));
    return 0;
  }
}
