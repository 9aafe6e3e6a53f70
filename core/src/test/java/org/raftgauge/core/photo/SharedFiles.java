// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Finds the data sets that lie beside the repository; tests that need them skip without. */
final class SharedFiles {

  private SharedFiles() {}

  /** Returns a folder of the shared data, or skips the test. */
  static Path folder(String name) {
    Optional<Path> folder = shared().map(root -> root.resolve("data").resolve(name));
    Assumptions.assumeTrue(
        folder.isPresent() && Files.isDirectory(folder.get()),
        "shared/data/" + name + " is not beside the repository");
    return folder.get();
  }

  /** Returns the pictures below a folder of the shared data, sorted, or skips the test. */
  static List<Path> pictures(String name) {
    try (Stream<Path> files = Files.walk(folder(name))) {
      return files.filter(SharedFiles::isPicture).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isPicture(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return name.endsWith(".jpg") || name.endsWith(".png");
  }

  private static Optional<Path> shared() {
    String given = System.getProperty("raftgauge.shared");
    if (given != null) {
      return Optional.of(Path.of(given));
    }
    Path at = Path.of(System.getProperty("user.dir")).toAbsolutePath();
    while (at != null) {
      if (Files.isDirectory(at.resolve("shared").resolve("data"))) {
        return Optional.of(at.resolve("shared"));
      }
      at = at.getParent();
    }
    return Optional.empty();
  }
}
