// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What the sections work with.
 *
 * @param root the checkout
 * @param work folder for runs and rendered sets
 * @param seed of the rendered set
 * @param tunedSeed of a rendered set that rules were found on
 * @param photos number of photos of each rendered set
 */
public record Bench(Path root, Path work, long seed, long tunedSeed, int photos) {

  /** Returns the folder of a rendered set and what is made of it. */
  Path rendered(long setSeed) {
    return work.resolve("rendered-" + setSeed + "-" + photos);
  }

  /**
   * Finds a folder of the shared test data: below the system property {@code raftgauge.shared}, or
   * below a folder {@code shared} beside the checkout or one of its parents.
   *
   * @param name of the data
   * @return the folder, where there is one
   */
  Optional<Path> shared(String name) {
    String given = System.getProperty("raftgauge.shared");
    if (given != null) {
      return Optional.of(Path.of(given, "data", name)).filter(Files::isDirectory);
    }
    for (Path at = root.toAbsolutePath().normalize(); at != null; at = at.getParent()) {
      Path data = at.resolve("shared").resolve("data").resolve(name);
      if (Files.isDirectory(data)) {
        return Optional.of(data);
      }
    }
    return Optional.empty();
  }
}
