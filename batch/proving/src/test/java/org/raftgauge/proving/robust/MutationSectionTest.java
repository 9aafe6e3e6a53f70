// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MutationSectionTest {
  @TempDir Path root;

  @Test
  void packagesRunNowReplaceTheirRowsAndTheOthersStay() throws IOException {
    Path folder = Files.createDirectories(root.resolve("core/target/mutation/growth"));
    Files.writeString(
        folder.resolve("mutations.xml"),
        "<mutation detected='true' status='KILLED' n='1'/><mutation status='TIMED_OUT'/>"
            + "<mutation status='SURVIVED'/><mutation status='NO_COVERAGE'/>");
    String page =
        "| `cohort` | 10 | 9 | 0 | 90 % | commit a |\n| `growth` | 7 | 1 | 6 | 14 % | commit a |\n";
    String body = MutationSection.of(root, page, "commit b").body();
    assertTrue(
        body.endsWith(
            """
            | `cohort` | 10 | 9 | 0 | 90 % | commit a |
            | `growth` | 4 | 2 | 1 | 50 % | commit b |
            """),
        body);
  }
}
