// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CoverageSectionTest {
  /** The header is that of JaCoCo 0.8's {@code jacoco.csv}. */
  private static final String HEADER =
      "GROUP,PACKAGE,CLASS,INSTRUCTION_MISSED,INSTRUCTION_COVERED,BRANCH_MISSED,BRANCH_COVERED,"
          + "LINE_MISSED,LINE_COVERED,COMPLEXITY_MISSED,COMPLEXITY_COVERED,METHOD_MISSED,"
          + "METHOD_COVERED\n";

  @TempDir Path root;

  @Test
  void classesOfAPackageAddUp() throws IOException {
    Path table = root.resolve("core/target/site/jacoco/jacoco.csv");
    Files.createDirectories(table.getParent());
    Files.writeString(
        table,
        HEADER
            + "core,org.raftgauge.core.a,A,0,9,1,3,2,8,0,0,0,0\n"
            + "core,org.raftgauge.core.a,B,0,9,0,0,0,10,0,0,0,0\n"
            + "core,org.raftgauge.core.b,C,9,0,2,0,5,0,0,0,0,0\n");
    String text = CoverageSection.of(root, "commit x").orElseThrow().body();
    assertTrue(text.contains("| `core.a` | 20 | 90.0 % | 4 | 75.0 % |"), text);
    assertTrue(text.contains("| `core.b` | 5 | 0.0 % | 2 | 0.0 % |"), text);
    assertTrue(text.contains("| **core** | 25 | 72.0 % | 6 | 50.0 % |"), text);
  }

  @Test
  void withoutARunThereIsNoSection() throws IOException {
    assertEquals(Optional.empty(), CoverageSection.of(root, "commit x"));
  }
}
