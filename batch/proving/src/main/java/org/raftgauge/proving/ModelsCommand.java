// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.proving.accuracy.ShipModels;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Teaches the colour models that come with the program. */
@Command(
    name = "models",
    mixinStandardHelpOptions = true,
    description =
        "Renders photos, paints them by their truth and teaches the colour models that come with"
            + " the program. Takes ten minutes or more.")
final class ModelsCommand implements Callable<Integer> {
  private static final String PLACE = "core/src/main/resources/org/raftgauge/core/book";

  @Option(names = "--work", required = true, description = "Folder for photos and paintings.")
  private Path work;

  @Option(
      names = "--root",
      description = "The checkout, whose files are replaced. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Override
  public Integer call() throws IOException, InputException {
    ShipModels.make(work, root.resolve(PLACE));
    return 0;
  }
}
