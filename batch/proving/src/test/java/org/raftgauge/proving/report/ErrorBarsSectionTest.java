// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ErrorBarsSectionTest {
  @TempDir private Path folder;

  @Test
  void theRenderedRunIsReadFromTheWorkFolder() throws IOException {
    Path work = folder.resolve("rendered-5-2");
    Files.createDirectories(work.resolve("run"));
    Files.createDirectories(work.resolve("set"));
    Files.writeString(
        work.resolve("set").resolve("truth.csv"),
        """
        photo,raft,site,projected_area_cm2,visible_area_cm2,condition,habit
        p.jpg,R,A1,10,10,sun,basil
        """);
    Files.writeString(
        work.resolve("run").resolve("sites.csv"),
        """
        photo,raft,site,projected_area_cm2,projected_area_se_cm2,visible_area_cm2
        p.jpg,R,A1,11,2,11
        """);
    Section section = ErrorBarsSection.make(new Bench(folder, folder, 5, 5, 2));
    // (11 - 10) / 2 = 0.5.
    String row = " | 1 | +0.50 | 0.50 | 100.0 % | | |  |\n";
    assertTrue(section.body().contains("| sun" + row + "| all" + row), section.body());
    assertTrue(section.body().contains("| basil" + row), section.body());
    assertEquals("", section.summary());
  }

  @Test
  void withoutRunsThereAreNoTables() throws IOException {
    assertFalse(
        ErrorBarsSection.make(new Bench(folder, folder, 5, 5, 2)).body().contains("| look"));
  }
}
