// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FuzzSectionTest {
  @TempDir Path root;

  /** Two runs as the fuzzer ends them, and one thing that broke the reader. */
  private static final String LOG =
      """
      #11\tDONE   cov: 40 ft: 60 corp: 5/1kb
      Done 11 runs in 7 second(s)
      stat::number_of_executed_units: 11
      #30\tDONE   cov: 44 ft: 75 corp: 6/1kb
      Done 30 runs in 20 second(s)
      stat::number_of_executed_units: 30
      """;

  @Test
  void runsAddUpAndEdgesAreThoseOfTheLast() throws IOException {
    for (String target : List.of("book", "csv", "tag", "photo")) {
      Files.createDirectories(root.resolve("core/src/test/resources/fuzz").resolve(target));
    }
    Files.writeString(root.resolve("core/src/test/resources/fuzz/csv/plain"), "a,b\n");
    Path out = Files.createDirectories(root.resolve("core/target/fuzz/csv"));
    Files.writeString(out.resolve("log.txt"), LOG);
    Files.writeString(out.resolve("crash-1"), "x");
    String body = FuzzSection.of(root, "commit x").body();
    assertTrue(body.contains("| csv | 1 | 27 | 41 | 44 | 75 | 1 |"), body);
    assertTrue(body.contains("| tag | 0 | not run | | | | |"), body);
  }
}
